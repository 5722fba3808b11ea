export function DivideSection() {
  return null;
}
