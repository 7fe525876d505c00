/** Makes the user's words harmless inside HTML and SVG: elements and quoted attributes. */
const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;',
}

/** Characters that XML 1.0 forbids and lone surrogates become U+FFFD. */
export const wellFormed = (text: string): string =>
  text
    // oxlint-disable-next-line no-control-regex -- these are the characters to remove
    .replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, '\ufffd')
    .replaceAll(/[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g, '\ufffd')

export const escapeMarkup = (text: string): string =>
  wellFormed(text).replaceAll(/[&<>"']/g, (character) => ENTITIES[character] ?? character)
