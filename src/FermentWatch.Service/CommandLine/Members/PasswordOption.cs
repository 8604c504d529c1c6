using System.CommandLine;
using FermentWatch.Intake.Credentials;

namespace FermentWatch.Service.CommandLine.Members;

/// <summary>Where a new password comes from: made here and printed once, or read from the input. Never from an argument, which others on the
/// machine could see.</summary>
internal sealed class PasswordOption
{
    private readonly Option<bool> _stdin = new("--stdin") { Description = "Reads the password from the first line of the input; without it one is made and printed once." };

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
