using Spectre.Console;
using Spectre.Console.Rendering;

namespace FermentWatch.Service.CommandLine;

/// <summary>Consoles for tables over the writers of a call.</summary>
internal static class Consoles
{
    /// <summary>Writes a table, without the blanks that pad it to the width.</summary>
    public static void Write(IRenderable table, CommandContext context)
    {
        using var text = new StringWriter();
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = AnsiSupport.No,
            ColorSystem = ColorSystemSupport.NoColors,
            Interactive = InteractionSupport.No,
            Out = new AnsiConsoleOutput(text),
        });
        console.Profile.Width = context.Width;
        console.Write(table);
        foreach (string line in text.ToString().Split('\n').Select(line => line.TrimEnd()).Where(line => line.Length > 0))
            context.Output.WriteLine(line);
    }
}
