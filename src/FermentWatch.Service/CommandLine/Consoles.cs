using Spectre.Console;
using Spectre.Console.Rendering;

namespace FermentWatch.Service.CommandLine;

/// <summary>Consoles for tables over the writers of a call.</summary>
internal static class Consoles
{
    /// <summary>Shows a bar beside the output while something is worked out.</summary>
    /// <param name="what">What is worked out.</param>
    /// <param name="work">The work; it tells the share that is done, 0 to 1.</param>
    public static T WithProgress<T>(string what, Func<Action<double>, T> work) => Bar().Start(progress => work(Told(progress, what)));

    /// <summary>The same for long work that waits; without a terminal nothing is shown.</summary>
    public static Task<T> WithProgressAsync<T>(string what, CommandContext context, Func<Action<double>, Task<T>> work) =>
        context.IsTerminal ? Bar().StartAsync(progress => work(Told(progress, what))) : work(_ => { });

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

    private static Progress Bar() => AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Console.Error) }).Progress()
        .AutoClear(true).Columns(new SpinnerColumn(), new TaskDescriptionColumn(), new ProgressBarColumn(), new ElapsedTimeColumn());

    private static Action<double> Told(ProgressContext progress, string what)
    {
        ProgressTask task = progress.AddTask(Markup.Escape(what), maxValue: 1);
        return share => task.Value = share;
    }
}
