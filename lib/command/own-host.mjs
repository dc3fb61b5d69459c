/**
 * Whether a Host header names this machine itself. A page elsewhere can point its own name at
 * 127.0.0.1 and would then be read with this machine's rights (DNS rebinding); its name gives it away.
 *
 * @param {string | undefined} host as sent, with or without a port
 */
export function isOwnHost(host) {
  return host !== undefined && /^(localhost|127\.0\.0\.1|\[::1\])(:\d{1,5})?$/i.test(host);
}
