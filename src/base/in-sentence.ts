/** A name as it stands inside a sentence: `Motor cover` → `motor cover`; `PCB cover` and `M4` keep their capitals. */
export const inSentence = (name: string): string =>
  /^[A-Z][a-z]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name
