using System.Globalization;
using System.Text.Json;
using FermentWatch.Kinetics;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>Reads the fields of a JSON object that strangers wrote, and gathers what is wrong with them by their paths.</summary>
internal sealed class JsonFields
{
    private const int ShownLetters = 40;
    private readonly JsonElement _of;
    private readonly string _path;
    private readonly HashSet<string> _asked = [];

    public JsonFields(JsonElement of, string path, List<Refusal>? refusals = null)
    {
        (_of, _path, Refusals) = (of, path, refusals ?? []);
        if (of.ValueKind != JsonValueKind.Object)
            Refusals.Add(new Refusal(path.Length == 0 ? "file" : path, Shown(of), "an object with named fields would be right"));
    }

    /// <summary>What was wrong so far, in this object and in those it holds.</summary>
    public List<Refusal> Refusals { get; }

    public void Refuse(string field, string came, string wouldBeRight) => Refusals.Add(new Refusal(PathOf(field), came, wouldBeRight));

    public bool Has(string field) => Find(field) is not null;

    /// <summary>A text; one that must be there where nothing is taken in its place.</summary>
    public string Text(string field, string? ifMissing) => Find(field) switch
    {
        null => ifMissing ?? Missing(field, "a text", ""),
        { ValueKind: JsonValueKind.String } found => found.GetString()!,
        { } other => Wrong(field, other, "a text in quotes", ""),
    };

    /// <summary>A finite number.</summary>
    public double Number(string field, double? ifMissing) => Find(field) switch
    {
        null => ifMissing ?? Missing(field, "a number", 0.0),
        { ValueKind: JsonValueKind.Number } found when found.TryGetDouble(out double number) && double.IsFinite(number) => number,
        { } other => Wrong(field, other, "a number without quotes", 0.0),
    };

    /// <summary>One of a few names, whatever the case.</summary>
    public T Choice<T>(string field, T ifMissing) where T : struct, Enum
    {
        string typed = Text(field, "");
        string? name = Enum.GetNames<T>().FirstOrDefault(each => each.Equals(typed, StringComparison.OrdinalIgnoreCase));
        if (name is null && Find(field) is { ValueKind: JsonValueKind.String } other)
            Wrong(field, other, $"one of {string.Join(", ", Enum.GetNames<T>())}", ifMissing);
        return name is null ? ifMissing : Enum.Parse<T>(name);
    }

    /// <summary>Texts; none where the field is missing.</summary>
    public IReadOnlyList<string> Texts(string field) => [.. Elements(field).Select((each, index) => each.ValueKind == JsonValueKind.String
        ? each.GetString()!.Trim() : Wrong(Indexed(field, index), each, "a text in quotes", ""))];

    /// <summary>Objects; none where the field is missing.</summary>
    public IReadOnlyList<T> List<T>(string field, Func<JsonFields, T> read) => [.. Elements(field).Select((each, index) =>
        read(new JsonFields(each, PathOf(Indexed(field, index)), Refusals)))];

    /// <summary>Refuses every field that nobody asked for.</summary>
    public void RefuseOthers()
    {
        if (_of.ValueKind != JsonValueKind.Object)
            return;
        foreach (string other in _of.EnumerateObject().Select(each => each.Name).Where(name => !_asked.Contains(name)))
            Refusals.Add(new Refusal(PathOf(Shown(other)), "a field that is not known",
                $"leave it out; known here are {string.Join(", ", _asked.Order(StringComparer.Ordinal))}"));
    }

    private IEnumerable<JsonElement> Elements(string field)
    {
        if (Find(field) is not { } found)
            return [];
        return found.ValueKind == JsonValueKind.Array ? found.EnumerateArray() : Wrong<JsonElement[]>(field, found, "a list in square brackets", []);
    }

    private JsonElement? Find(string field)
    {
        _asked.Add(field);
        return _of.ValueKind == JsonValueKind.Object && _of.TryGetProperty(field, out JsonElement found) ? found : null;
    }

    private T Missing<T>(string field, string what, T instead)
    {
        if (_of.ValueKind == JsonValueKind.Object)
            Refuse(field, "nothing", $"{what} would be right");
        return instead;
    }

    private T Wrong<T>(string field, JsonElement came, string what, T instead)
    {
        Refuse(field, Shown(came), $"{what} would be right");
        return instead;
    }

    private string PathOf(string field) => _path.Length == 0 ? field : $"{_path}.{field}";

    private static string Indexed(string field, int index) => string.Create(CultureInfo.InvariantCulture, $"{field}[{index}]");

    private static string Shown(JsonElement element) => Shown(element.GetRawText());

    /// <summary>Of what strangers wrote no more than a person reads, and nothing that is not seen.</summary>
    private static string Shown(string text)
    {
        string shown = text.Length > ShownLetters ? text[..ShownLetters] + "…" : text;
        return Typed.SafeText.HasHiddenSigns(shown) ? "text with signs that are not seen" : shown;
    }
}
