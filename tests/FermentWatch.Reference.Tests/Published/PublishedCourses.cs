using FermentWatch.Kinetics.Guilds;
using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Simulation;

namespace FermentWatch.Reference.Tests.Published;

/// <summary>
/// The rows of ferment_courses.csv and the end points with a day that are courses of one jar at one temperature. What a
/// source does not say is assumed here and nowhere else: room temperature is 20 C, cucumbers lie in two thirds of their weight of
/// brine at 25 C with 3e6 CFU/mL of starter.
/// </summary>
internal static class PublishedCourses
{
    private const double RoomCelsius = 20;
    private const double CucumberCelsius = 25;

    /// <summary>Rows read in abstracts after the fit: they are scored and fitted to by nobody.</summary>
    private static readonly string[] Later = ["K96", "K97", "K98", "K99"];

    /// <summary>All that the model is fitted to.</summary>
    public static IReadOnlyList<PublishedCourse> All { get; } = [.. Courses().Where(row => !Later.Contains(row.Id)), .. EndPoints()];

    /// <summary>All that forecasts are scored on: a pH or an acidity on a day.</summary>
    public static IReadOnlyList<PublishedCourse> Scored { get; } =
        [.. Courses().Concat(EndPoints()).Where(row => row.Quantity is "ph" or "acidity_percent_lactic")];

    /// <summary>
    /// Whether an answer meets its row: inside the published range, widened by a tenth of an acidity or 0.1 of a pH; for a day at
    /// which something is reached, the day within a quarter of the range.
    /// </summary>
    public static bool IsMet(PublishedCourse row, double value, double? day) => row.Quantity switch
    {
        "ph" => value >= row.Low - 0.1 && value <= row.High + 0.1,
        "ripe_day" => day >= row.Low * 0.75 && day <= row.High * 1.25,
        "lab_log10_cfu_per_ml" => value >= row.Low && value <= row.High,
        _ => value >= row.Low * 0.9 && value <= row.High * 1.1,
    };

    private static IEnumerable<PublishedCourse> Courses()
    {
        string[] quantities = ["acidity_percent_lactic", "ph", "ripe_day", "lab_log10_cfu_per_ml"];
        foreach (IReadOnlyDictionary<string, string> row in Figures.Read("ferment_courses.csv"))
        {
            // K70 is a store of ripe kimchi, not a course from packing; it has a test of its own.
            if (!quantities.Contains(row["quantity"]) || row["id"] == "K70")
                continue;
            yield return Of(row, row["cut"], row["quantity"], Figures.Number(row, "low"), Figures.Number(row, "high"));
        }
    }

    private static IEnumerable<PublishedCourse> EndPoints()
    {
        foreach (IReadOnlyDictionary<string, string> row in Figures.Read("end_points.csv"))
        {
            if (row["id"] is not ("E02" or "E03"))
                continue;
            double acidity = Figures.Number(row, "acidity_percent_lactic");
            double ph = Figures.Number(row, "ph");
            double acidityError = row["id"] == "E02" ? 0.09 : 0.12;
            double phError = row["id"] == "E02" ? 0.11 : 0.04;
            yield return Of(row, "shredded", "acidity_percent_lactic", acidity - acidityError, acidity + acidityError) with { Id = row["id"]
                + " acidity" };
            yield return Of(row, "shredded", "ph", ph - phError, ph + phError) with { Id = row["id"] + " pH" };
        }
    }

    private static PublishedCourse Of(IReadOnlyDictionary<string, string> row, string cut, string quantity, double low, double high)
    {
        string vegetable = row["vegetable"];
        double salt = Figures.Number(row, "salt_percent");
        string celsius = row.GetValueOrDefault("temperature_c") ?? "";
        return new()
        {
            Id = row["id"],
            Vegetable = vegetable,
            Study = StudyOf(row["id"]),
            Celsius = celsius.Length > 0 ? Figures.Number(row, "temperature_c") : vegetable == "cucumber" ? CucumberCelsius : RoomCelsius,
            Day = Figures.Number(row, "day"),
            Quantity = quantity,
            Low = low,
            High = high,
            Status = row["status"],
            Source = row["source"],
            Contents = model => Jar(model, vegetable, cut, salt),
        };
    }

    internal static JarContents Jar(ModelParameters model, string name, string cut, double saltPercent)
    {
        if (!Vegetable.TryFind(name, out Vegetable? vegetable))
            throw new InvalidOperationException($"{name} is not in the catalogue.");
        bool inBrine = cut.Contains("brine", StringComparison.Ordinal);
        var recipe = JarRecipe.Of(vegetable, CutOf(cut, vegetable.Flora == FloraKind.Leaf), saltPercent) with { AddedWaterKilograms = inBrine ? 0.67
            : 0, VesselLitres = 1 };
        JarContents contents = JarContents.Of(recipe, model);
        if (cut == "juice")
            contents = contents with { OuterShare = 0.98, OuterStart = 1 };
        return inBrine ? contents with { FirstCounts = [contents.FirstCounts[0], contents.FirstCounts[1], 3e-3, contents.FirstCounts[3]] } : contents;
    }

    private static Cut CutOf(string cut, bool isLeaf) => cut switch
    {
        "shredded" => Cut.Shredded,
        "" when isLeaf => Cut.SaltedLeaves,
        "salted leaves" => Cut.SaltedLeaves,
        "juice" => Cut.Shredded,
        "" or "cubes" or "pieces" or "pressed dry roots" => Cut.Pieces,
        "whole in brine" => Cut.Whole,
        _ => throw new InvalidOperationException($"{cut} is no cut of the figures."),
    };

    private static string StudyOf(string id) => id switch
    {
        "K01" or "K02" or "K03" or "K04" or "K05" => "Pederson & Albury 1969",
        "K10" or "K11" or "K12" => "kimchi review",
        "K20" or "K21" => "cucumber brine",
        "K30" => "Viander 2003",
        "K80" or "K81" => "Kim S.D. 1999",
        "K82" => "Joshi & Sharma 2009",
        "K83" or "K99" => "Tamang & Sarkar 1993",
        "K90" or "K91" or "K92" or "K93" => "Kim 2020",
        "K94" or "K95" => "Kim Y.A. 2002",
        "K96" => "pickled napa 2023",
        "K97" or "K98" => "Nam 2017",
        "E02" or "E03" => "Vatansever",
        _ => "Mheen & Kwon 1984",
    };
}
