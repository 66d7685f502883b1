// Runs before the page's own code: writes down what went wrong in the page, for Browser.problems().
(() => {
  const problems = [];
  Object.defineProperty(window, "problemsSeenByTests", { value: problems });
  addEventListener("error", (event) => problems.push(`error: ${event.message ?? `could not load ${event.target?.src ?? event.target?.href}`}`), true);
  addEventListener("unhandledrejection", (event) => problems.push(`unhandled: ${event.reason}`));
  addEventListener("securitypolicyviolation", (event) =>
    problems.push(`content policy: ${event.violatedDirective} refused ${event.blockedURI} ${event.sample}`.trim()), true);
})();
