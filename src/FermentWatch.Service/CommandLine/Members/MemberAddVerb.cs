using System.CommandLine;
using FermentWatch.Acts.Members;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary><c>member add</c>: somebody who may sign in.</summary>
internal static class MemberAddVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>("NAME") { Description = "The name to sign in with, which also stands beside what this person enters." };
        var role = new Option<string>("--role") { HelpName = "ROLE",
            Description = "adult or child; adult without it. A child looks at jars and reports." };
        var verb = new Command("add", "Adds somebody and prints a password, once.") { name, role };
        var password = new PasswordOption(verb);
        HouseholdRecords.SetAction(verb, context, mayMake: true, async (call, provider, _, _) =>
        {
            var reader = new FieldReader();
            MemberRole asked = reader.ReadChoice("role", call.GetValue(role), MemberRole.Adult);
            if (reader.Refusals.Count > 0)
                return context.Refuse(reader.Refusals);
            string typed = (call.GetValue(name) ?? "").Trim(), chosen = password.Of(call, context);
            IReadOnlyList<Refusal> refusals = await provider.GetRequiredService<ManageMembers>().AddAsync(typed, asked, chosen);
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            password.Say(call, typed, chosen, context);
            return ExitCode.Done;
        });
        return verb;
    }
}
