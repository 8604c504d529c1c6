using System.CommandLine;
using FermentWatch.Service.CommandLine.Members;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>member</c>: who may sign in.</summary>
internal static class MemberVerb
{
    public static Command Create(CommandContext context) =>
        new("member", "People who may sign in: adds one, lists them, sets a new password or role, removes one. Works while the service runs.")
    {
        MemberAddVerb.Create(context),
        MemberListVerb.Create(context),
        MemberPasswordVerb.Create(context),
        MemberRoleVerb.Create(context),
        MemberRemoveVerb.Create(context),
    };
}
