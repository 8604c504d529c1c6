using System.CommandLine;
using FermentWatch.Kinetics;
using FermentWatch.Service.CommandLine.Records;
using FermentWatch.Acts.Members;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary><c>member password</c>: a new password.</summary>
internal static class MemberPasswordVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>("NAME") { Description = "The name this person signs in with." };
        var verb = new Command("password", "Sets a new password and prints it, once; sessions begun with the old one end.") { name };
        var password = new PasswordOption(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            string typed = (call.GetValue(name) ?? "").Trim(), chosen = password.Of(call, context);
            IReadOnlyList<Refusal> refusals = await provider.GetRequiredService<ManageMembers>().SetPasswordAsync(typed, chosen, cancellationToken);
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            password.Say(call, typed, chosen, context);
            return ExitCode.Done;
        });
        return verb;
    }
}
