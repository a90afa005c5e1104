/** Colours that are said of a machine in an advert; the longer first. */
export const colourWords =
  /\b(?:off[- ]white|black|white|grey|gray|silver|cream|beige|ivory|brown|red|crimson|maroon|burgundy|pink|orange|yellow|gold|green|olive|teal|turquoise|blue|navy|purple|violet|lilac|bronze|copper)\b/i
