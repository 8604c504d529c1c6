using System.Buffers;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using FermentWatch.Kinetics;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Kitchen.Recipes;

/// <summary>
/// A recipe as a file that households hand to each other: JSON by a schema of our own, described in README.md. Text in it is text and
/// nothing else. Whatever the schema does not know is refused, so that a file never means more than what was read of it.
/// </summary>
public static class RecipeFile
{
    /// <summary>What stands in its first field; the number is that of the schema and grows when old readers would misread a file.</summary>
    public const string Format = "fermentwatch-recipe/1";

    /// <summary>Bytes of the longest file that is taken.</summary>
    public const int LongestBytes = 64 * 1024;

    private const int Deepest = 6;

    private static readonly JsonDocumentOptions Strict = new() { MaxDepth = Deepest, AllowDuplicateProperties = false };

    /// <summary>A recipe as a file.</summary>
    public static byte[] Write(string name, Mixture mixture)
    {
        var buffer = new ArrayBufferWriter<byte>();
        using (var writer = new Utf8JsonWriter(buffer, new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.Default }))
        {
            writer.WriteStartObject();
            writer.WriteString("format", Format);
            writer.WriteString("name", name);
            Write(writer, "vegetables", mixture.Vegetables);
            Write(writer, "seasonings", mixture.Seasonings);
            writer.WriteNumber("water_grams", Rounded(mixture.WaterGrams));
            if (mixture.VinegarGrams > 0)
            {
                writer.WriteNumber("vinegar_grams", Rounded(mixture.VinegarGrams));
                writer.WriteNumber("vinegar_percent", mixture.VinegarPercent);
            }
            if (mixture.StarterGrams > 0)
                writer.WriteNumber("starter_brine_grams", Rounded(mixture.StarterGrams));
            writer.WriteNumber("salt_percent", mixture.SaltPercent);
            writer.WriteString("salt_of", mixture.SaltOf.ToString());
            writer.WriteString("sourness", mixture.Sourness.ToString());
            writer.WriteString("cut", mixture.Cut.ToString());
            writer.WriteStartArray("allergens");
            foreach (string allergen in mixture.Allergens)
                writer.WriteStringValue(allergen);
            writer.WriteEndArray();
            writer.WriteString("note", mixture.Note);
            writer.WriteEndObject();
        }
        return buffer.WrittenSpan.ToArray();
    }

    /// <summary>Reads a file, or tells every field that is wrong; null where anything is.</summary>
    public static (string Name, Mixture? Mixture, IReadOnlyList<Refusal> Refusals) Read(ReadOnlyMemory<byte> file)
    {
        if (file.Length > LongestBytes)
            return ("", null, [new Refusal("file", $"{file.Length / 1024} KB", $"a recipe of at most {LongestBytes / 1024} KB would be right")]);
        try
        {
            // Editors may begin a file with a mark of its byte order.
            ReadOnlyMemory<byte> json = file.Span.StartsWith(Encoding.UTF8.Preamble) ? file[Encoding.UTF8.Preamble.Length..] : file;
            using JsonDocument document = JsonDocument.Parse(json, Strict);
            return Read(document.RootElement);
        }
        catch (JsonException wrong)
        {
            return ("", null, [new Refusal("file", $"what is no JSON as it is taken here, at line {wrong.LineNumber + 1}",
                $"a recipe as “Save as a file” writes it, in UTF-8, each field once and at most {Deepest} levels deep, would be right")]);
        }
    }

    private static (string, Mixture?, IReadOnlyList<Refusal>) Read(JsonElement root)
    {
        var fields = new JsonFields(root, "");
        string format = fields.Text("format", "");
        if (fields.Refusals.Count == 0 && format != Format)
            fields.Refuse("format", format, $"{Format} would be right: another format, or a later one, is not read here");
        if (fields.Refusals.Count > 0)
            return ("", null, fields.Refusals);
        string name = fields.Text("name", null).Trim();
        (IReadOnlyList<(MixturePart Part, bool IsShare)> vegetables, IReadOnlyList<(MixturePart Part, bool IsShare)> seasonings) =
            (fields.List("vegetables", ReadPart), fields.List("seasonings", ReadPart));
        Cut usual = vegetables.Count > 0 && Vegetable.TryFind(vegetables[0].Part.Name, out Vegetable? main) ? main.UsualCut : Cut.Pieces;
        (double water, bool waterIsShare) = fields.AmountOrShare("water_grams", "water_share_percent", ifMissing: 0);
        (double vinegar, bool vinegarIsShare) = fields.AmountOrShare("vinegar_grams", "vinegar_share_percent", ifMissing: 0);
        (double starter, bool starterIsShare) = fields.AmountOrShare("starter_brine_grams", "starter_brine_share_percent", ifMissing: 0);
        var mixture = new Mixture
        {
            Vegetables = [.. vegetables.Select(each => each.Part)], Seasonings = [.. seasonings.Select(each => each.Part)], WaterGrams = water,
            VinegarGrams = vinegar, VinegarPercent = fields.Number("vinegar_percent", Mixture.UsualVinegarPercent), StarterGrams = starter,
            SaltPercent = fields.Number("salt_percent", null), SaltOf = fields.Choice("salt_of", SaltBasis.VegetablesAndWater),
            Sourness = fields.Choice("sourness", SournessLevel.Usual(vegetables is [var first, ..] ? first.Part.Name : "")),
            Cut = fields.Choice("cut", usual), Allergens = fields.Texts("allergens"), Note = fields.Text("note", "").Trim(),
        };
        fields.RefuseOthers();
        (double Grams, bool IsShare)[] liquids = [(water, waterIsShare), (vinegar, vinegarIsShare), (starter, starterIsShare)];
        bool[] areShares = [.. vegetables.Concat(seasonings).Select(each => each.IsShare),
            .. liquids.Where(liquid => liquid.Grams > 0).Select(liquid => liquid.IsShare)];
        if (fields.Refusals.Count == 0 && MixtureRules.WrongShares("share_percent", areShares, mixture) is { } wrong)
            fields.Refusals.Add(wrong);
        // A field that cannot be read is told once, and not again for what was taken in its place.
        HashSet<string> told = [.. fields.Refusals.Select(refusal => refusal.Field)];
        fields.Refusals.AddRange(MixtureRules.Check(name, mixture).Where(refusal => !told.Contains(refusal.Field)));
        return (name, fields.Refusals.Count == 0 ? mixture : null, fields.Refusals);
    }

    private static (MixturePart, bool) ReadPart(JsonFields fields)
    {
        string name = fields.Text("name", null).Trim();
        (double grams, bool isShare) = fields.AmountOrShare("grams", "share_percent", ifMissing: null);
        string note = fields.Text("note", "").Trim();
        fields.RefuseOthers();
        return (new MixturePart(Vegetable.TryFind(name, out Vegetable? known) ? known.Name : name, grams, note), isShare);
    }

    private static void Write(Utf8JsonWriter writer, string list, IReadOnlyList<MixturePart> parts)
    {
        writer.WriteStartArray(list);
        foreach (MixturePart part in parts)
        {
            writer.WriteStartObject();
            writer.WriteString("name", part.Name);
            writer.WriteNumber("grams", Rounded(part.Grams));
            writer.WriteString("note", part.Note);
            writer.WriteEndObject();
        }
        writer.WriteEndArray();
    }

    /// <summary>To a hundredth of a gram, or as many digits as a smaller amount needs.</summary>
    private static double Rounded(double grams) => grams < 1 ? grams : Math.Round(grams, 2);

    /// <summary>Grams, or a share as grams of a kilogram.</summary>
    private static (double Grams, bool IsShare) AmountOrShare(this JsonFields fields, string grams, string share, double? ifMissing)
    {
        bool isShare = fields.Has(share);
        if (isShare && fields.Has(grams))
            fields.Refuse(share, $"beside {grams}", "one of the two would be right");
        return isShare ? (fields.Number(share, null) / 100 * MixtureRules.GramsOfAllShares, true) : (fields.Number(grams, ifMissing), false);
    }
}
