const signs: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }

/** Words as they may stand in HTML or SVG, as text or within a quoted attribute: nothing in them is read as markup. */
export const htmlText = (words: string): string => words.replace(/[&<>"']/g, (sign) => signs[sign] ?? sign)
