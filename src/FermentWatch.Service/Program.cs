using FermentWatch.Service.CommandLine;


if (OpenFiles.TooFew() is { } tooFew)
{
    Console.Error.WriteLine(tooFew);
    return ExitCode.Failed;
}
try
{
    // Work is waited for on threads of the pool here and there; that it grows by two a second would be felt at the door.
    ThreadPool.SetMinThreads(Math.Max(32, 8 * Environment.ProcessorCount), Math.Max(32, 8 * Environment.ProcessorCount));
    return await FermentWatchCommand.RunAsync(args, CommandContext.OfThisProcess(TimeProvider.System));
}
catch (Exception trouble)
{
    // Whatever it was, a person at a terminal and the journal are helped by a line, not by a trace.
    Console.Error.WriteLine($"fermentwatch ended: {trouble.GetType().Name}: {trouble.Message.ReplaceLineEndings(" ")}");
    return ExitCode.Failed;
}
