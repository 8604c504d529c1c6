using Spectre.Console;

namespace FermentWatch.Service.CommandLine;

/// <summary>Consoles for tables and charts over the writers of a call.</summary>
internal static class Consoles
{
    /// <summary>A console on the call's output: plain text unless a terminal shows it.</summary>
    public static IAnsiConsole For(CommandContext context)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = context.IsTerminal ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = context.IsTerminal ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(context.Output),
        });
        console.Profile.Width = context.Width;
        return console;
    }
}
