/**
 * The sheet's own content security policy: nothing is fetched, and only this style and this script run.
 * The style and the script are constants, so their hashes are constants too: no hashing at run time and no 'unsafe-inline'.
 * A test computes them again (SHA-256, base64) and prints the right ones when they have changed.
 */
export const STYLE_SHA256 = 'hN6yS3T0gXClETt7t54KesLbgMthW+CaazrdeTOkEWA='
export const SCRIPT_SHA256 = '5FyV+3SYidgotmmsfHNbCd1JKSRwKmDUGXfFmBQS8KY='

export const POCKET_CSP = [
  "default-src 'none'",
  `style-src 'sha256-${STYLE_SHA256}'`,
  `script-src 'sha256-${SCRIPT_SHA256}'`,
  "base-uri 'none'",
  "form-action 'none'",
].join('; ')
