using System.CommandLine;
using System.Text.Json;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Guides;
using FermentWatch.Service.CommandLine.SaltByWeight;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>salt</c>: salt and brine by weight, and what spoons are worth.</summary>
internal static class SaltVerb
{
    private static readonly Caution[] Shown = [Cautions.NoPlainWater, Cautions.SaltRestricted, Cautions.LocalGuidanceFirst];

    public static Command Create(CommandContext context)
    {
        var verb = new Command("salt", "Salt and brine by weight: how much for so many per cent, how many per cent so much is, or a brine alone.");
        Option<string> Text(string name, string helpName, string description)
        {
            var option = new Option<string>(name) { HelpName = helpName, Description = description };
            verb.Add(option);
            return option;
        }
        Option<string> mass = Text("--produce-mass", "MASS", "Prepared vegetables, such as 2.3kg or 5lb.");
        Option<string> percent = Text("--percent", "PERCENT", "Salt wanted, per cent of vegetables and added water together, 1.5 to 8.");
        Option<string> water = Text("--water", "AMOUNT", "Water added, such as 500g, 1l or 1qt.");
        Option<string> vinegar = Text("--vinegar", "AMOUNT", "Vinegar added, such as 60g or 0.25cup.");
        Option<string> salt = Text("--salt", "AMOUNT", "Salt there is, such as 54g, 3tbsp or 0.75cup: asks how many per cent that is.");
        Option<string> brine = Text("--brine", "PERCENT", "A brine alone, per cent by mass: salt for the water, and what a litre of it holds.");
        Option<string> kind = Text("--salt-kind", "KIND", $"{SaltKindNames.Known}; table without it. Spoons of each weigh differently.");
        var form = new OutputForm(verb);
        verb.SetAction(call =>
        {
            var input = new SaltInput(call.GetValue(mass), call.GetValue(percent), call.GetValue(water), call.GetValue(vinegar),
                call.GetValue(salt), call.GetValue(brine), call.GetValue(kind));
            (SaltQuestion question, IReadOnlyList<Refusal> refusals) = SaltQuestion.Read(input);
            return refusals.Count > 0 ? context.Refuse(refusals) : Show(SaltAnswer.To(question), form.Of(call), context);
        });
        return verb;
    }

    private static int Show(SaltAnswer answer, OutputKind kind, CommandContext context)
    {
        if (kind == OutputKind.Csv)
        {
            context.Output.WriteLine(string.Join(',', answer.Figures.Select(figure => figure.Column)));
            context.Output.WriteLine(string.Join(',', answer.Figures.Select(figure => figure.Text)));
        }
        else if (kind == OutputKind.Json)
            context.Output.WriteLine(JsonSerializer.Serialize(answer.Figures.ToDictionary(figure => figure.Column, figure =>
                Math.Round(figure.Value, 6))));
        else
            ShowTable(answer, context);
        return ExitCode.Done;
    }

    private static void ShowTable(SaltAnswer answer, CommandContext context)
    {
        int width = answer.Lines.Max(line => line.What.Length);
        foreach ((string what, string howMuch) in answer.Lines)
            context.Output.WriteLine($"{what.PadRight(width)}  {howMuch}");
        foreach (Caution caution in Shown)
            context.Output.WriteLine($"Caution: {caution.Text}");
    }
}
