using System.CommandLine;
using FermentWatch.Acts;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Words;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Jars;

/// <summary><c>jar titration</c>: an acidity that was titrated, as the page takes it.</summary>
internal static class JarTitrationVerb
{
    public static Command Create(CommandContext context)
    {
        var number = new Argument<int>("JAR") { Description = "Number of the jar." };
        var percent = new Option<string>("--percent") { HelpName = "PERCENT",
            Description = "The acidity, per cent lactic, such as 1.2%; or what was used:" };
        var ml = new Option<string>("--base-ml") { HelpName = "ML",
            Description = "Sodium hydroxide used, mL, to pH 8.2 or the first pink that stays." };
        var normality = new Option<string>("--normality") { HelpName = "N", Description = "Its strength; 0.1 without it." };
        var sample = new Option<string>("--sample-ml") { HelpName = "ML", Description = "Brine titrated, mL; 10 without it." };
        var at = new Option<string>("--at") { HelpName = "TIME", Description = "When, on the household's clock; now without it." };
        var by = new Option<string>("--by") { HelpName = "NAME", Description = "Who measured; 'command line' without it." };
        var verb = new Command("titration",
            "Enters a titration of a jar and prints it with its arithmetic. It moves the forecast and says nothing of the acid line.") { number,
            percent, ml, normality, sample, at, by };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            if (await provider.GetRequiredService<JarReader>().RecordAsync(call.GetValue(number), cancellationToken) is not { } jar)
                return context.Refuse([new Refusal("jar", FormattableString.Invariant($"{call.GetValue(number)}"),
                    "the number of a jar there is would be right")]);
            var form = new TitrationForm
            {
                Percent = call.GetValue(percent), BaseMillilitres = call.GetValue(ml), BaseNormality = call.GetValue(normality),
                    SampleMillilitres = call.GetValue(sample), At = call.GetValue(at),
            };
            var mark = new EntryMark(Guid.CreateVersion7(context.Clock.GetUtcNow()), new Person(call.GetValue(by) ?? "command line"),
                MemberRole.Adult);
            TitrationEntry entry = await provider.GetRequiredService<TitrateBrine>().DoAsync(jar, form, mark, cancellationToken);
            if (entry.Titration is not { } titration)
                return context.Refuse(entry.Refusals);
            await context.Output.WriteLineAsync($"Written down for jar {jar.Number}: {ObservationWords.Of(titration)}.");
            return ExitCode.Done;
        });
        return verb;
    }
}
