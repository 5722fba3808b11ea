/**
 * What the built page may load and run: its own files, and nothing else. Style attributes are set by script
 * through the object model, which needs no exception. Pictures that the person opens are blobs; the browser
 * reads the pictures of its own file door as data addresses.
 */
export const POLICY: Readonly<Record<string, string>> = {
  'default-src': "'none'",
  'script-src': "'self'",
  'style-src': "'self'",
  'font-src': "'self'",
  'img-src': "'self' blob: data:",
  'connect-src': "'self'",
  'worker-src': "'self'",
  'manifest-src': "'self'",
  'base-uri': "'none'",
  'form-action': "'none'",
};

export const policyText = (policy: Readonly<Record<string, string>>): string =>
  Object.entries(policy)
    .map(([what, from]) => `${what} ${from}`)
    .join('; ');

/**
 * As a header of the server, where a page can also forbid being framed and workers get the policy too. Those may compile
 * WebAssembly of the tool's own files: plain fonts are made of variable ones by it. The page keeps to its own, which is
 * stricter.
 */
export const POLICY_HEADER = policyText({
  ...POLICY,
  'script-src': "'self' 'wasm-unsafe-eval'",
  'frame-ancestors': "'none'",
});
