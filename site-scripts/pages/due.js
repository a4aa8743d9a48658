// The days on which listed questions are due. The practice page notes them (which day that is, calc decides), the first
// page counts those that have come.

const STORE = "physics-line-by-line.due";

// A day as "2026-03-09", by this device's clock.
export function today(later = 0) {
  const now = new Date();
  now.setDate(now.getDate() + later);
  const two = (/** @type {number} */ number) => String(number).padStart(2, "0");
  return `${String(now.getFullYear()).padStart(4, "0")}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

// late: by how many days each listed question is, as calc has it.
/** @param {number[]} late */
export function keepDue(late) {
  try {
    localStorage.setItem(STORE, JSON.stringify(late.map((days) => today(-days))));
  } catch {
    // nothing can be kept here
  }
}

export function dueToday() {
  /** @type {unknown} */
  let days;
  try {
    days = JSON.parse(localStorage.getItem(STORE) || "[]");
  } catch {
    return 0; // nothing is kept, or not by us
  }
  if (!Array.isArray(days)) return 0;
  const now = today();
  return days.filter((day) => typeof day === "string" && day <= now).length;
}

export function forgetDue() {
  localStorage.removeItem(STORE);
}
