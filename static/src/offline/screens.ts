/** Which addresses are screens of the app: all of them are the one shell, which reads its address itself. */

const SCREENS = [
  /^\/$/, /^\/plan\//, /^\/mine\//, /^\/row$/, /^\/write$/, /^\/technique$/, /^\/athlete$/, /^\/settings$/, /^\/log$/, /^\/wall(\/[^/]+)?$/, /^\/walls$/, /^\/prompter$/, /^\/p(\/[^/]*)?$/,
];

/** Whether the shell answers here, whatever is asked behind the path: a reload or a deep link may ask something. */
export function isScreen(path: string): boolean {
  return SCREENS.some((screen) => screen.test(path));
}
