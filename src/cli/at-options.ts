import { placeText, type Path } from '../base/form/place-text.ts'

/** Writes places of an input as the options they were typed in, `plate.voltageV` as `--volts`; a place without one stays as it is. */
export const atOptions =
  (options: Readonly<Record<string, string>>) =>
  (path: Path): string => {
    const place = placeText(path)
    return options[place] ?? options[String(path[0])] ?? place
  }

/** A number as typed; text that is none stays as it is, so that its form refuses it by what was written. */
export const typedNumber = (text: unknown): unknown =>
  typeof text === 'string' && text.trim() !== '' && !Number.isNaN(Number(text)) ? Number(text) : text
