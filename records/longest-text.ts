/** Judgement: a site with a long surveyed profile is about 20 kB; a photo or a program is larger than this. */
export const LONGEST_TEXT = 64 * 1024;
