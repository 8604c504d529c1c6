using System.CommandLine;

namespace FermentWatch.Service.CommandLine;

/// <summary>The options <c>--csv</c> and <c>--json</c> of a verb.</summary>
internal sealed class OutputForm
{
    private readonly Option<bool> _csv = new("--csv") { Description = "Comma separated, for machines." };
    private readonly Option<bool> _json = new("--json") { Description = "JSON, for machines." };

    public OutputForm(Command verb)
    {
        verb.Add(_csv);
        verb.Add(_json);
        verb.Validators.Add(result =>
        {
            if (result.GetValue(_csv) && result.GetValue(_json))
                result.AddError("--csv and --json exclude each other");
        });
    }

    public OutputKind Of(ParseResult call) =>
        call.GetValue(_csv) ? OutputKind.Csv : call.GetValue(_json) ? OutputKind.Json : OutputKind.Table;
}

/// <summary>For whom an answer is written.</summary>
public enum OutputKind
{
    /// <summary>For people.</summary>
    Table,

    /// <summary>For machines, comma separated.</summary>
    Csv,

    /// <summary>For machines, JSON.</summary>
    Json,
}
