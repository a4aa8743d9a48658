// Puts the state into the address bar without a step in the history; a form alone in a frame stays alone.
/** @param {string} state */
export function show(state) {
  if (state && document.documentElement.classList.contains("only-form")) state += "&only=form";
  history.replaceState(null, "", state ? `#${state}` : location.pathname.split("/").pop() || ".");
}
