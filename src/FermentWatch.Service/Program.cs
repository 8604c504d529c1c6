using FermentWatch.Service.CommandLine;

return await FermentWatchCommand.RunAsync(args, CommandContext.OfThisProcess(TimeProvider.System));
