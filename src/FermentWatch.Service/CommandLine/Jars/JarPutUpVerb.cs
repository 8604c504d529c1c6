using System.CommandLine;
using FermentWatch.Acts;
using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Forecasts;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Jars;

/// <summary><c>jar put-up</c>: one jar or several alike, by the same form as the page.</summary>
internal static class JarPutUpVerb
{
    public static Command Create(CommandContext context)
    {
        var verb = new Command("put-up",
            "Puts up one jar or several alike and prints their numbers. Starter brine is entered on the page, which knows whose may go in.");
        Option<string> One(string name, string helpName, string description)
        {
            var option = new Option<string>(name) { HelpName = helpName, Description = description };
            verb.Add(option);
            return option;
        }
        Option<string> what = One("--what", "NAME", $"The vegetable, or '{PutUpForm.SomethingElse}'."),
            itsName = One("--its-name", "NAME", "The name of something else; nothing is forecast of it.");
        Option<string> howMuch = One("--how-much", "MASS", "How much in each, such as 800g or '2 heads'."),
            also = One("--also", "LIST", "More in it, such as 'carrot 200g, ginger 20g'.");
        Option<string> salt = One("--salt", "PERCENT", "Such as 2.25%, 20g or 'by taste'."), water = One("--water", "MASS", "Water added to each."),
            saltOf = One("--salt-of", "WHAT", "What the per cent are of: VegetablesAndWater (without it), Vegetables, or Brine (of the water).");
        Option<string> vinegar = One("--vinegar", "AMOUNT", "Vinegar in each, such as 60g or '1/4 cup'."),
            strength = One("--vinegar-strength", "PERCENT", "Its acid; 5 % without it.");
        Option<string> vessel = One("--vessel", "VOLUME", "Such as 1l or 1qt."), place = One("--place", "PLACE", "Where it stands."),
            cut = One("--cut", "CUT", "As usual for it without it.");
        Option<string> sour = One("--how-sour", "LEVEL", "ALittleSour to VerySour, or 1 to 5; sour, or as sour as it gets, without it."),
            many = One("--how-many", "COUNT", "How many alike; 1 without it.");
        Option<string> packed = One("--packed", "TIME", "When, such as 2026-10-04T18:30; now without it."),
            name = One("--name", "NAME", "What it is called; the vegetable's name without it.");
        var right = new Option<bool>("--it-is-right") { Description = "What looks odd is right." };
        verb.Add(right);
        HouseholdRecords.SetAction(verb, context, mayMake: false, async (call, provider, _, cancellationToken) =>
        {
            var form = new PutUpForm
            {
                What = call.GetValue(what), ItsName = call.GetValue(itsName), HowMuch = call.GetValue(howMuch), Also = call.GetValue(also),
                    Salt = call.GetValue(salt), SaltOf = call.GetValue(saltOf),
                AddedWater = call.GetValue(water), Vinegar = call.GetValue(vinegar), VinegarStrength = call.GetValue(strength),
                    Vessel = call.GetValue(vessel),
                Place = call.GetValue(place), Cut = call.GetValue(cut), Target = call.GetValue(sour), HowMany = call.GetValue(many),
                    PackedAt = call.GetValue(packed),
                Name = call.GetValue(name), ItIsRight = call.GetValue(right),
            };
            var mark = new EntryMark(Guid.CreateVersion7(context.Clock.GetUtcNow()), new Person("command line"), MemberRole.Adult);
            PutUpAnswer answer = await provider.GetRequiredService<PutUpJars>().DoAsync(form, mark, cancellationToken);
            if (answer.Jars.Count == 0)
                return context.Refuse([.. answer.Refusals,
                    .. answer.Doubts.Select(doubt => new Refusal(doubt.Field, "odd", $"{doubt.Question} Then say it again with --it-is-right"))]);
            foreach (Jar jar in answer.Jars)
                await context.Output.WriteLineAsync($"jar {jar.Number}, {jar.Name}{(NoForecast.Of(jar) is { } why ? $". {why}" : "")}");
            return ExitCode.Done;
        });
        return verb;
    }
}
