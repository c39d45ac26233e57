import type { Person } from './records.ts';

/** Who stands behind a reference of the log. `nobody`: the writer named no one; `forgotten`: the name was erased. */
export type Who = { readonly kind: 'named'; readonly name: string } | { readonly kind: 'nobody' } | { readonly kind: 'forgotten' };

const REFERENCE = /^[\da-f]{8}(?:-[\da-f]{4}){3}-[\da-f]{12}$/u;

/** True for a reference that stands for a person: a random UUID (RFC 9562), so that it says nothing of them. */
export function isPersonReference(by: string): boolean {
  return REFERENCE.test(by);
}

/** Who wrote something, from the reference it carries and the people known. */
export function whoWrote(by: string, people: readonly Person[]): Who {
  const known = people.find(({ reference }) => reference === by);
  if (known !== undefined) return { kind: 'named', name: known.name };
  return { kind: isPersonReference(by) ? 'forgotten' : 'nobody' };
}
