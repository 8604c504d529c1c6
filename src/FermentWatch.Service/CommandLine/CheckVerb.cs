using System.CommandLine;
using FermentWatch.Service.Settings;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>check</c>: the settings in force, and everything wrong with them at once.</summary>
internal static class CheckVerb
{
    public static Command Create(CommandContext context)
    {
        var verb = new Command("check", "Prints the settings in force, secrets masked, and everything that is wrong with them at once.");
        var settings = new SettingsOptions(verb);
        verb.SetAction(call =>
        {
            (IConfiguration configuration, SettingsReading reading) = settings.Gather(call, context);
            foreach ((string section, object options) in reading.Settings.Sections)
                foreach ((string key, string value, string origin) in EffectiveSettings.Of(configuration, section, options))
                    context.Output.WriteLine($"{key} = {(value.Length > 0 ? value : "(none)")} [{origin}]");
            if (reading.Errors.Count == 0)
                return ExitCode.Done;
            context.Error.WriteLine(reading.Message);
            return ExitCode.WrongCall;
        });
        return verb;
    }
}
