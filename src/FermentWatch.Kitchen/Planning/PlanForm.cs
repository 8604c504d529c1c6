namespace FermentWatch.Kitchen.Planning;

/// <summary>One word of the question for a plan, as an address has it, and what it means.</summary>
/// <param name="Name">Its name in an address.</param>
/// <param name="Meaning">What is typed there.</param>
public sealed record PlanField(string Name, string Meaning)
{
    /// <summary>Its name in a sentence.</summary>
    public string InWords => Name.Replace('_', ' ');
}

/// <summary>What is asked of a plan, as typed. All of it fits into an address, so that a plan is a link that can be kept.</summary>
/// <param name="words">What was typed, by the name of the field; empty counts as left out.</param>
public sealed class PlanForm(IReadOnlyDictionary<string, string> words)
{
    public static readonly PlanField What = new("what", "The vegetable, by its name in the catalogue.");
    public static readonly PlanField Salt = new("salt", "Salt in per cent of vegetables and added water together, 1.5 to 8.");
    public static readonly PlanField Sour = new("sour", "How sour, 1 to 5 or its name; empty is usual for the vegetable.");
    public static readonly PlanField Each = new("servings", "Servings a week, each who eats; a whole or broken number.");
    public static readonly PlanField Eaters = new("eaters", "How many eat.");
    public static readonly PlanField Serving = new("serving", "How much a serving is, such as 1/2 cup, 120 ml or 75 g.");
    public static readonly PlanField From = new("from", "The first day it is eaten, such as 2026-11-01.");
    public static readonly PlanField Until = new("until", "The last day it is eaten.");
    public static readonly PlanField Place = new("place", "Where it works, by the name of the place.");
    public static readonly PlanField Temperature = new("temperature", "What it is like there; empty takes what is measured, or said of the place.");
    public static readonly PlanField Store = new("store", "Where it is kept, by the name of the place.");
    public static readonly PlanField Room = new("room", "How many jars of it fit there, of which size, such as 20 x 1 qt.");
    public static readonly PlanField Vessels = new("vessels", "How many vessels of which size there are for it; a size alone: as many as it takes.");
    public static readonly PlanField ADay = new("a_day", "Most vessels filled on one day.");
    public static readonly PlanField Days = new("days", "Days of the week on which people have time, such as Saturday,Sunday.");
    public static readonly PlanField Loss = new("loss", "Share of the jars that is lost, per cent.");
    public static readonly PlanField Feast = new("feast", "A day for which a jar should be ready; empty asks nothing.");
    public static readonly PlanField AwayFrom = new("away_from", "First day away.");
    public static readonly PlanField AwayUntil = new("away_until", "Day of coming back.");
    public static readonly PlanField WarmMonth = new("warm_month", "A month that may be warmer than usual, 1 to 12.");
    public static readonly PlanField WarmBy = new("warm_by", "By how much, such as 3 C.");
    public static readonly PlanField PowerOut = new("power_out", "For how many days the power fails in the store, 1 to 14.");

    /// <summary>Every field, in the order in which they are asked.</summary>
    public static readonly IReadOnlyList<PlanField> Fields =
        [What, Salt, Sour, Each, Eaters, Serving, From, Until, Place, Temperature, Store, Room, Vessels, ADay, Days, Loss, Feast, AwayFrom, AwayUntil,
            WarmMonth, WarmBy, PowerOut];

    /// <summary>What was typed; empty where nothing was.</summary>
    public string this[PlanField field] => words.TryGetValue(field.Name, out string? typed) ? typed.Trim() : "";

    /// <summary>Whether anything was asked at all.</summary>
    public bool IsEmpty => Fields.All(each => this[each].Length == 0);

    /// <summary>A form of what an address says; what it says besides is left out.</summary>
    public static PlanForm Of(Func<string, string?> word) =>
        new(Fields.ToDictionary(field => field.Name, field => word(field.Name) ?? ""));

    /// <summary>The same with other words in some fields.</summary>
    public PlanForm With(params IReadOnlyList<(PlanField Field, string Typed)> changes) => Of(name =>
        changes.LastOrDefault(change => change.Field.Name == name) is { Field: not null } change ? change.Typed : words.GetValueOrDefault(name));

    /// <summary>The same, and where it says nothing what another says.</summary>
    public PlanForm Over(PlanForm usual) => Of(name => string.IsNullOrWhiteSpace(words.GetValueOrDefault(name))
        ? usual[Fields.First(field => field.Name == name)] : words[name]);

    /// <summary>As an address has it behind its question mark; what is empty is left out.</summary>
    public string ToQuery() => string.Join('&', Fields.Where(field => this[field].Length > 0)
        .Select(field => $"{field.Name}={Uri.EscapeDataString(this[field])}"));
}
