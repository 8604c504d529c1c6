using FermentWatch.Service.CommandLine;
using Microsoft.Extensions.Time.Testing;

namespace FermentWatch.Service.Tests.CommandLine;

/// <summary>One call of the command line, and what it answered.</summary>
/// <param name="ExitCode">0, 1 or 2.</param>
/// <param name="Output">What was asked for.</param>
/// <param name="Error">Refusals, cautions and remarks.</param>
internal sealed record Call(int ExitCode, string Output, string Error)
{
    /// <summary>The lines of the output.</summary>
    public string[] Lines => Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    /// <summary>The lines of the errors.</summary>
    public string[] ErrorLines => Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);

    public static Task<Call> Of(params string[] args) => WithEnvironment(new Dictionary<string, string>(), args);

    public static Task<Call> OnTerminal(params string[] args) => Run("", new Dictionary<string, string>(), isTerminal: true, args);

    public static Task<Call> WithEnvironment(IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Run("", environment, isTerminal: false, args);

    public static Task<Call> WithInput(string input, IReadOnlyDictionary<string, string> environment, params string[] args) =>
        Run(input, environment, isTerminal: false, args);

    private static async Task<Call> Run(string input, IReadOnlyDictionary<string, string> environment, bool isTerminal, string[] args)
    {
        using var output = new StringWriter { NewLine = "\n" };
        using var error = new StringWriter { NewLine = "\n" };
        var context = new CommandContext
        {
            Input = new StringReader(input),
            Output = output,
            Error = error,
            IsTerminal = isTerminal,
            Clock = new FakeTimeProvider(new DateTimeOffset(2026, 10, 4, 12, 0, 0, TimeSpan.Zero)),
            Environment = environment,
        };
        int exitCode = await FermentWatchCommand.RunAsync(args, context);
        return new Call(exitCode, output.ToString(), error.ToString());
    }
}
