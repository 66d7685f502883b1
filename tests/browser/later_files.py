"""What the phone keeps after everything else."""

LATER_KEPT = """async () => {
  const listed = (await (await fetch("/sw.js")).text()).match(/\\["\\/static\\/dist\\/[^\\]]*\\]/);
  const kept = (await (await caches.open("later")).keys()).map(({ url }) => new URL(url).pathname);
  return JSON.parse(listed[0]).every((path) => kept.includes(path)) && kept.length > 0;
}"""
"""A function of the page: whether every file that nobody needs in order to row is kept."""
