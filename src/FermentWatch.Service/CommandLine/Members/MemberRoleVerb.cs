using System.CommandLine;
using FermentWatch.Acts.Members;
using FermentWatch.Kinetics;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary><c>member role</c>: makes an adult a child, or the other way round.</summary>
internal static class MemberRoleVerb
{
    public static Command Create(CommandContext context)
    {
        var name = new Argument<string>("NAME") { Description = "The name this person signs in with." };
        var role = new Argument<string>("ROLE") { Description = "adult or child." };
        var verb = new Command("role",
            "Makes somebody an adult or a child; this person's sessions, calendar address, links and ways to be told end.") { name, role };
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            var reader = new FieldReader();
            MemberRole asked = reader.ReadChoice("role", call.GetValue(role), MemberRole.Child);
            if (reader.Refusals.Count > 0)
                return context.Refuse(reader.Refusals);
            string typed = (call.GetValue(name) ?? "").Trim();
            IReadOnlyList<Refusal> refusals = await provider.GetRequiredService<ManageMembers>().SetRoleAsync(typed, asked, cancellationToken);
            if (refusals.Count > 0)
                return context.Refuse(refusals);
            await context.Output.WriteLineAsync($"{typed} is {(asked == MemberRole.Adult ? "an adult" : "a child")} from now on and signs in again.");
            return ExitCode.Done;
        });
        return verb;
    }
}

/// <summary><c>member list</c>: everybody who may sign in.</summary>
internal static class MemberListVerb
{
    private static readonly string[] Columns = ["name", "role"];

    public static Command Create(CommandContext context)
    {
        var verb = new Command("list", "Lists everybody who may sign in.");
        var form = new OutputForm(verb);
        HouseholdRecords.SetAction(verb, context, async (call, provider, _, cancellationToken) =>
        {
            IReadOnlyList<KnownAccount> members = await provider.GetRequiredService<ManageMembers>().AllAsync(cancellationToken);
            Rows.Write(Columns, [.. members.Select(member => new[] { member.Name, member.Role == MemberRole.Child ? "child" : "adult" })],
                form.Of(call), context);
            return ExitCode.Done;
        });
        return verb;
    }
}

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
