using FermentWatch.Kitchen.Members;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary>Somebody who may sign in.</summary>
/// <param name="Name">The name to sign in with, which also stands beside what this person entered.</param>
/// <param name="Role">What this person may do.</param>
internal sealed record Member(string Name, MemberRole Role);
