export function ArrangeSection() {
  return null;
}
