/** What stands above the tables in docs/benchmarks.md. */
export const INTRODUCTION = `# Benchmarks

Written by \`npm run bench\`, which measures what is in \`dist/\` (\`npm run build\`); never by hand. Each row is a job that somebody waits for. Ours and
a peer take turns in one process or page, every round beginning with another one; figures are medians. A ratio is ours
over theirs: 0.5 is half the time. Limits are those that we set ourselves; where one is missed the row says so.

Times are those of one machine; ratios hold on others too, so \`npm run bench -- --check\` measures anew and fails where
a ratio is more than twice the one that stands here. \`npm run bench -- --quick dates\` shows part of it within a minute.
`;
