using System.CommandLine;
using FermentWatch.Acts.Members;
using FermentWatch.Intake.Credentials;
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

/// <summary>Where a new password comes from: made here and printed once, or read from the input. Never from an argument, which others on the
/// machine could see.</summary>
internal sealed class PasswordOption
{
    private readonly Option<bool> _stdin =
        new("--stdin") { Description = "Reads the password from the first line of the input; without it one is made and printed once." };

    public PasswordOption(Command verb) => verb.Add(_stdin);

    public string Of(ParseResult call, CommandContext context) =>
        call.GetValue(_stdin) ? context.Input.ReadLine() ?? "" : SensorPassword.Generate();

    /// <summary>Says what the password is, where it was made here.</summary>
    public void Say(ParseResult call, string name, string password, CommandContext context)
    {
        context.Output.WriteLine($"name      {name}");
        if (call.GetValue(_stdin))
            return;
        context.Output.WriteLine($"password  {password}");
        context.Output.WriteLine("The password is not kept and is not shown again.");
    }
}
