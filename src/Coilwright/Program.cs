using Coilwright;

return await Cli.RunAsync(args, Console.Out, Console.Error).ConfigureAwait(false);
