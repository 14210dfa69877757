/**
 * The one content policy, and the headers that go with it on every response.
 *
 * It is sent as a header and never as a meta tag, which does not reach workers.
 * Electron's scheme and the local server both take it from here, so that a page
 * that works in one works in the other.
 */
const DIRECTIVES = {
  "default-src": "'none'",
  "script-src": "'self' 'wasm-unsafe-eval'",
  "style-src": "'self'",
  "img-src": "'self' data: blob:",
  "font-src": "'self'",
  "connect-src": "'self'",
  "worker-src": "'self'",
  "base-uri": "'none'",
  "form-action": "'none'",
  "frame-ancestors": "'none'",
} as const;

/** The content policy as the value of its header. */
export const CONTENT_POLICY: string = Object.entries(DIRECTIVES)
  .map(([directive, sources]) => `${directive} ${sources}`)
  .join("; ");

/**
 * The headers of every response, errors included: nothing of another origin
 * may read, embed or share a process with the page.
 */
export const PROTECTING_HEADERS = {
  "Content-Security-Policy": CONTENT_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Cross-Origin-Opener-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "Referrer-Policy": "no-referrer",
} as const;
