namespace FermentWatch.Service.CommandLine;

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
