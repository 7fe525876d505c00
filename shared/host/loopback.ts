/**
 * How a page speaks to the loopback host; both sides import this.
 *
 * 1. The page is opened at `http://127.0.0.1:PORT/#code=CODE`. The code works once and for 60 s.
 * 2. The page takes it out of the address and sends `POST /exchange` with `{"code": CODE}`; the answer is `{"token": TOKEN}`.
 *    It keeps the token in `sessionStorage` under `TOKEN_STORAGE_KEY`, so that a reload goes on.
 * 3. Each operation is `POST /call/NAME`, its input as JSON, the token in the header `TOKEN_HEADER`; the answer is a `Result` as JSON.
 *    Any refusal of the door itself is a 4xx with an empty body.
 */
export const EXCHANGE_PATH = '/exchange'
export const CALL_PATH = '/call/'
export const TOKEN_HEADER = 'x-kipstow-token'
export const TOKEN_STORAGE_KEY = 'kipstow-token'
export const CODE_IN_FRAGMENT = 'code='
