// What runs in the head of each page, before anything is laid out and before the theme's own scripts.

import { forwardOldAddress } from "../old-address.js";
import { showOnlyForm } from "../only-form.js";
import { startSearchLate } from "../search-worker.js";
import { standIn } from "../storage.js";
import { startThemeLate } from "../theme-script.js";

standIn(); // first: the theme's scripts ask for storage
startSearchLate();
startThemeLate();
forwardOldAddress();
showOnlyForm();
