// The form of a question, its worked answer, and the check of an answer of the reader's own.

import "../carry-over.js";
import { startChecks } from "../check-mine.js";
import { startForms } from "../forms.js";

startForms();
startChecks();
