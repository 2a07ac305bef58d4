/** The same with a capital in front: `End cap`. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
