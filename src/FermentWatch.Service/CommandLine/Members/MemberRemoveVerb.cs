using System.CommandLine;
using FermentWatch.Kinetics;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Acts.Members;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary><c>member remove</c>: takes somebody's sign-in away.</summary>
internal static class MemberRemoveVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>("NAME") { Description = "The name this person signs in with." };
        var verb = new Command("remove", "Takes somebody's sign-in away; what they entered stays.") { name };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            string typed = (call.GetValue(name) ?? "").Trim();
            IReadOnlyList<Refusal> refusals = await provider.GetRequiredService<ManageMembers>().RemoveAsync(typed, cancellationToken);
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            await context.Output.WriteLineAsync($"{typed} cannot sign in any more; what {typed} entered stays.");
            return ExitCode.Done;
        });
        return verb;
    }
}
