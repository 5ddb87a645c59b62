/**
 * Addresses of scripts that a page starts by itself: workers. The content policy asks that such an address pass through
 * a named policy; ours lets through what this program serves and nothing else.
 */
interface Policy {
  createScriptURL(address: string): string;
}
interface Policies {
  createPolicy(name: string, rules: Policy): Policy;
}

const policies = (globalThis as { trustedTypes?: Policies }).trustedTypes;

const rules: Policy = {
  createScriptURL(address) {
    const { origin, href } = new URL(address, location.href);
    if (origin !== location.origin)
      throw new TypeError(`Cannot start ${address}: not served by this program`);
    return href;
  },
};

const policy = policies?.createPolicy("grazewell", rules) ?? rules;

/** Typed as text because browsers without such policies take text; where they have them it is an object of theirs. */
export const scriptAddress = (address: string): string => policy.createScriptURL(address);
