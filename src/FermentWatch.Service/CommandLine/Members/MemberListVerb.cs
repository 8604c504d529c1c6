using System.CommandLine;
using FermentWatch.Acts.Members;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Members;
using FermentWatch.Service.CommandLine.Records;

namespace FermentWatch.Service.CommandLine.Members;

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
