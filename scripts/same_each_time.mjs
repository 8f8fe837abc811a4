// What is made twice from the same files is the same: no chance and no clock in it. For the programs that runtime.py runs.
import crypto from "node:crypto";

crypto.randomFillSync = globalThis.crypto.getRandomValues = (array) => array.fill(0);
Date.now = () => 0;
performance.now = () => 0;

export const env = { HOME: "/home/pyodide", PYTHONHASHSEED: "0" };
