/** A title as it stands within a sentence: only its first letter is small, `alloy steel of about 300 HB`. */
export const inSentence = (title: string): string => title.charAt(0).toLowerCase() + title.slice(1)
