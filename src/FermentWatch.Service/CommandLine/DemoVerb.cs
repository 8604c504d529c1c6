using System.CommandLine;
using FermentWatch.Kitchen.Typed;
using FermentWatch.Service.Demo;

namespace FermentWatch.Service.CommandLine;

/// <summary><c>demo</c>: the service with an invented household.</summary>
internal static class DemoVerb
{
    public static Command Create(CommandContext context)
    {
        var port = new Option<string>("--port") { HelpName = "PORT",
            Description = "Port of the pages, on this machine only; a free one without it." };
        var verb = new Command("demo",
            "Runs the service on this machine only, with an invented household in a temporary folder: sensors that report, jars of several ages, one of each trouble.") { port };
        verb.SetAction((call, cancellationToken) =>
        {
            var reader = new FieldReader();
            int asked = reader.ReadWhole("port", call.GetValue(port), 0, 0, 65_535);
            return reader.Refusals.Count > 0 ? Task.FromResult(context.Refuse(reader.Refusals))
                : new DemoRun(context, asked).RunAsync(cancellationToken);
        });
        return verb;
    }
}
