// What is made twice from the same files is the same: no chance and no clock in it. For the programs that runtime.py runs.
import crypto from "node:crypto";

crypto.randomFillSync = globalThis.crypto.getRandomValues = (array) => array.fill(0);
// A day like any other: at zero Python would not come to the calendar that it knows.
Date.now = () => Date.UTC(2026, 10, 25, 12, 34, 56, 789);
performance.now = () => 1234.5;

export const env = { HOME: "/home/pyodide", PYTHONHASHSEED: "0" };
