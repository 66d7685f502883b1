/** The bundler hands over text files as they are. */
declare module "*.txt" {
  const text: string;
  export default text;
}
