/** Hands a file to the browser to be kept, named after the dance. */
export function keep(made: Blob, title: string, ending: string): void {
  const name =
    title
      .toLowerCase()
      .replace(/[^\p{L}\p{N}]+/gu, '-')
      .replace(/^-|-$/g, '') || 'dance';
  const link = document.createElement('a');
  link.href = URL.createObjectURL(made);
  link.download = `${name}${ending}`;
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}
