// Plays the jobs in WebAssembly, one line each: job, seed, last tick, digest, marks.
import { readFileSync } from "node:fs";

const module = new WebAssembly.Module(readFileSync(process.argv[2]));
const asked = WebAssembly.Module.imports(module);
if (asked.length > 0) {
    console.error("the core must need nothing from its host, but asks for:", asked);
    process.exit(1);
}
const core = new WebAssembly.Instance(module, {}).exports;
const hex = (number) => BigInt.asUintN(64, number).toString(16).padStart(16, "0");
for (let job = 0; job < core.count(); job += 1) {
    for (let seed = 1; seed <= 2; seed += 1) {
        const digest = hex(core.digest(job, seed));
        console.log(`${job} ${seed} ${core.last_tick()} ${digest} ${hex(core.last_marks())}`);
    }
}
