/** A new name for a page. (`randomUUID` is not there for a tablet that comes over the hall's network.) */
export function handName(): string {
  return [...crypto.getRandomValues(new Uint8Array(12))].map((b) => b.toString(16).padStart(2, '0')).join('');
}
