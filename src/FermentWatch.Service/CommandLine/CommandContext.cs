namespace FermentWatch.Service.CommandLine;

/// <summary>What a verb may touch of the world around it.</summary>
public sealed record CommandContext
{
    /// <summary>What is typed or piped in.</summary>
    public TextReader Input { get; init; } = TextReader.Null;

    /// <summary>What was asked for.</summary>
    public required TextWriter Output { get; init; }

    /// <summary>Refusals, cautions and remarks.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Whether a person sees the output: charts and colours only then.</summary>
    public bool IsTerminal { get; init; }

    /// <summary>Columns of the terminal.</summary>
    public int Width { get; init; } = 100;

    /// <summary>The only clock.</summary>
    public required TimeProvider Clock { get; init; }

    /// <summary>The environment variables.</summary>
    public IReadOnlyDictionary<string, string> Environment { get; init; } = new Dictionary<string, string>();

    /// <summary>That of this process.</summary>
    public static CommandContext OfThisProcess(TimeProvider clock) => new()
    {
        Input = Console.In,
        Output = Console.Out,
        Error = Console.Error,
        IsTerminal = !Console.IsOutputRedirected,
        Width = Console.IsOutputRedirected ? 100 : Math.Clamp(Console.WindowWidth, 60, 160),
        Clock = clock,
        Environment = System.Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>()
            .ToDictionary(entry => (string)entry.Key, entry => (string?)entry.Value ?? "", StringComparer.Ordinal),
    };

    /// <summary>Says what was wrong with the call, a line each, and gives the exit code for it.</summary>
    public int Refuse(IEnumerable<Kinetics.Refusal> refusals)
    {
        foreach (Kinetics.Refusal refusal in refusals)
            Error.WriteLine(refusal);
        return ExitCode.WrongCall;
    }

    /// <summary>Says why a right call could not be carried out, and gives the exit code for it.</summary>
    public int Fail(string line)
    {
        Error.WriteLine(line);
        return ExitCode.Failed;
    }
}

/// <summary>What a verb tells the shell.</summary>
public static class ExitCode
{
    /// <summary>Done.</summary>
    public const int Done = 0;

    /// <summary>The call was right and could not be carried out.</summary>
    public const int Failed = 1;

    /// <summary>The call, or a setting, was wrong: trying the same again is no use.</summary>
    public const int WrongCall = 2;
}
