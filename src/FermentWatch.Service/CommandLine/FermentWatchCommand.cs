using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Parsing;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.CommandLine.Archives;

namespace FermentWatch.Service.CommandLine;

/// <summary>The command line: every verb, and what happens when a call cannot be understood.</summary>
public static class FermentWatchCommand
{
    private const string Name = "fermentwatch";

    /// <summary>How long a verb may take to end in good order once it is told to.</summary>
    private static readonly TimeSpan TimeToEnd = TimeSpan.FromSeconds(25);

    /// <summary>Parses and carries out one call. Returns its exit code.</summary>
    public static async Task<int> RunAsync(IReadOnlyList<string> args, CommandContext context, CancellationToken cancellationToken = default)
    {
        Command root = Create(context);
        // Files of further arguments would let a name that begins with @ read any file.
        ParseResult call = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (call.Errors.Count > 0)
            return Refuse(call, context);
        var configuration = new InvocationConfiguration
        {
            Output = context.Output, Error = context.Error, EnableDefaultExceptionHandler = false, ProcessTerminationTimeout = TimeToEnd,
        };
        return await call.InvokeAsync(configuration, cancellationToken);
    }

    private static Command Create(CommandContext context)
    {
        // A RootCommand would call itself after the file it was started from.
        var root = new Command(Name, "FermentWatch watches jars of fermenting vegetables: room temperature and pH in, days and reminders out.");
        root.Add(new HelpOption { Recursive = true });
        root.Add(new VersionOption());
        root.Add(ServeVerb.Create(context));
        root.Add(DemoVerb.Create(context));
        root.Add(OutlookVerb.Create(context));
        root.Add(SaltVerb.Create(context));
        root.Add(SensorVerb.Create(context));
        root.Add(JarVerb.Create(context));
        root.Add(RecipeVerb.Create(context));
        root.Add(MemberVerb.Create(context));
        root.Add(ExportVerb.Create(context));
        root.Add(ImportVerb.Create(context));
        root.Add(BackupVerb.Create(context));
        root.Add(RestoreVerb.Create(context));
        root.Add(CheckVerb.Create(context));
        root.Add(HealthcheckVerb.Create(context));
        root.SetAction(call => new HelpAction().Invoke(call));
        return root;
    }

    private static int Refuse(ParseResult call, CommandContext context)
    {
        string verb = WholeName(call.CommandResult);
        string[] known = [.. Known(call.CommandResult.Command)];
        foreach (ParseError error in call.Errors)
        {
            string? unknown = call.UnmatchedTokens.FirstOrDefault(token => error.Message.Contains($"'{token}'", StringComparison.Ordinal));
            string? nearest = unknown is null ? null : NearestName.Of(unknown, known);
            string right = nearest is null ? $"see {verb} --help" : $"did you mean {nearest}?";
            context.Error.WriteLine($"{verb}: {error.Message.TrimEnd('.')}; {right}");
        }
        return ExitCode.WrongCall;
    }

    /// <summary>The verb with those it stands under: <c>fermentwatch sensor list</c>.</summary>
    private static string WholeName(CommandResult result) =>
        result.Parent is CommandResult above ? $"{WholeName(above)} {result.Command.Name}" : result.Command.Name;

    private static IEnumerable<string> Known(Command command) =>
        command.Options.Select(option => option.Name).Concat(command.Subcommands.Select(verb => verb.Name));
}
