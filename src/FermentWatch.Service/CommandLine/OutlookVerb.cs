using System.CommandLine;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Service.CommandLine.Outlook;
using NodaTime.Extensions;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>outlook</c>: a forecast without a service.</summary>
internal static class OutlookVerb
{
    private const double MemberDaysOfASecond = 200_000;

    public static Command Create(CommandContext context)
    {
        var verb = new Command("outlook", "Forecast of a jar without a service: pH, acidity and sourness day by day, with their spread. "
            + "A forecast is not a measurement.");
        var options = new OutlookOptions(verb);
        var form = new OutputForm(verb);
        verb.SetAction(call =>
        {
            (OutlookCall asked, IReadOnlyList<Refusal> refusals) = CallReader.Read(options.Input(call), context.Clock.GetUtcNow().ToInstant());
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            OutlookAnswer answer = IsLong(asked) && context.IsTerminal
                ? Consoles.WithProgress($"{asked.Request.Members} members over {asked.Request.Days:0} days", progress =>
                    OutlookAnswer.To(asked, progress))
                : OutlookAnswer.To(asked, _ => { });
            Show(answer, form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }

    /// <summary>Whether it takes long enough, about a second, for a person to wonder.</summary>
    private static bool IsLong(OutlookCall call) => call.Request.Members * call.Request.Days > MemberDaysOfASecond;

    private static void Show(OutlookAnswer answer, OutputKind kind, CommandContext context)
    {
        if (kind == OutputKind.Table)
        {
            OutlookTable.Write(answer, context);
            return;
        }
        if (kind == OutputKind.Json)
            context.Output.WriteLine(OutlookJson.Text(answer));
        else
            foreach (string line in OutlookCsv.Lines(answer))
                context.Output.WriteLine(line);
        // For machines the figures stand alone on the output; what a person must know goes beside them.
        OutlookTable.WriteNotes(answer.Forecast, context.Error);
        context.Error.WriteLine($"Caution: {Cautions.ForecastIsNoMeasurement.Text}");
    }
}
