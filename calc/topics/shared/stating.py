"""The part that asks for a law in words, under the name that the chapters know it by."""

from calc.working.declaring import named as named
from calc.working.declaring import state as state
