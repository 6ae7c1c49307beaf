// The program under node sees the environment it is started in.
Module.preRun = [() => Object.assign(ENV, process.env)];
