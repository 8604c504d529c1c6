using FermentWatch.Kinetics.Produce;
using FermentWatch.Kinetics.Recipe;
using FermentWatch.Kinetics.Temperature;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Jars;
using FermentWatch.Kitchen.Places;
using FermentWatch.Kitchen.Typed;
using NodaTime;
using NodaTime.Text;

namespace FermentWatch.Kitchen.Planning;

/// <summary>Reads the question for a plan, or tells every field that is wrong.</summary>
/// <param name="household">For units.</param>
/// <param name="places">Where jars may stand.</param>
/// <param name="measured">Mean of the last weeks, Celsius, by the id of a place; places without are missing.</param>
/// <param name="today">The present day.</param>
public sealed class PlanReading(Household household, IReadOnlyList<Place> places, IReadOnlyDictionary<Guid, double> measured, LocalDate today)
{
    private const int LongestSpanDays = 366, FarthestDays = 540;
    private const double MostServingsAWeek = 500;

    /// <summary>How far a winter may be from what was measured lately, and from what somebody says in degrees; this project's own figures.</summary>
    private const double SpreadOfMeasured = 1.5, SpreadOfSaid = 1;

    private readonly FieldReader _reader = new();

    /// <summary>The question, null where anything is wrong, and what is.</summary>
    public (PlanQuestion? Question, IReadOnlyList<Kinetics.Refusal> Refusals) Read(PlanForm form)
    {
        Vegetable vegetable = ReadVegetable(form[PlanForm.What]);
        LocalDate from = ReadDate(PlanForm.From, form) ?? today, until = ReadDate(PlanForm.Until, form) ?? from;
        if (_reader.Refusals.Count == 0 && (until < from || Period.DaysBetween(from, until) >= LongestSpanDays))
            Refuse(PlanForm.Until, form, $"a day from the first one on, within {LongestSpanDays} days, would be right");
        Place? place = ReadPlace(PlanForm.Place, form), store = ReadPlace(PlanForm.Store, form);
        double celsius = Read(PlanForm.Temperature, form, Amount.Celsius, household.TemperatureUnit == TemperatureUnit.Fahrenheit ? "F" : "C", -5, 45,
            "-5 to 45 °C", ifEmpty: place is null ? 20 : Expected(place).MeanCelsius);
        int eaters = _reader.ReadWhole(PlanForm.Eaters.InWords, form[PlanForm.Eaters], 1, 1, 200);
        var question = new PlanQuestion
        {
            Today = today, Vegetable = vegetable, From = from, Until = until,
            SaltPercent = Read(PlanForm.Salt, form, Amount.Percent, "%", SaltDose.LowestPercent, SaltDose.HighestPercent, "1.5 to 8 %"),
            Target = ReadTarget(form, vegetable),
            ServingLitres = ReadServing(form, vegetable.UsualCut),
            ServingsAWeek = eaters * Read(PlanForm.Each, form, Amount.Number, null, 0.25, MostServingsAWeek, "1/4 to 500 a week"), Eaters = eaters,
            Place = place?.Name ?? "", Store = store?.Name ?? "",
            Room = place is null || form[PlanForm.Temperature].Length > 0 ? new TypicalRoom(celsius, SpreadOfSaid) : Expected(place),
            StoreRoom = store is null ? TypicalRoom.Refrigerator : Expected(store),
            StoreHolds = ReadRoom(form), Vessels = _reader.ReadVessels(PlanForm.Vessels.InWords, form[PlanForm.Vessels]),
            VesselsADay = _reader.ReadWhole(PlanForm.ADay.InWords, form[PlanForm.ADay], 10, 1, 100),
            Days = ReadDays(form), LossShare = Read(PlanForm.Loss, form, Amount.Percent, "%", 0, 50, "0 to 50 %") / 100,
            Feast = ReadDate(PlanForm.Feast, form), Away = ReadAway(form), Warm = ReadWarm(form),
            PowerOutDays = _reader.ReadWhole(PlanForm.PowerOut.InWords, form[PlanForm.PowerOut], 0, 1, 14),
        };
        if (_reader.Refusals.Count == 0 && question.ServingsAWeek > MostServingsAWeek)
            Refuse(PlanForm.Each, form, $"at most {MostServingsAWeek} a week of all who eat together would be right");
        return (_reader.Refusals.Count == 0 ? question : null, _reader.Refusals);
    }

    /// <summary>What is expected of a place: as measured lately, or as the household says of it.</summary>
    public TypicalRoom Expected(Place place) =>
        measured.TryGetValue(place.Id, out double mean) ? new TypicalRoom(mean, SpreadOfMeasured) : place.Typical.Room();

    private Vegetable ReadVegetable(string typed)
    {
        if (Vegetable.TryFind(typed, out Vegetable? vegetable))
            return vegetable;
        _reader.Refuse(PlanForm.What.InWords, typed, RefusedIngredient.TryFindReason(typed, out string? reason) ? $"a vegetable: {reason}"
            : $"one of {string.Join(", ", Vegetable.All.Select(each => each.Name))} would be right: of others nobody knows how long they take");
        return Vegetable.All[0];
    }

    private Sourness ReadTarget(PlanForm form, Vegetable vegetable)
    {
        Sourness target = _reader.ReadChoice(PlanForm.Sour.InWords, form[PlanForm.Sour], SournessLevel.Usual(vegetable.Name));
        IReadOnlyList<SournessLevel> reached = SournessLevel.ReachedBy(vegetable.Name);
        if (reached.All(level => level.Step != target))
            Refuse(PlanForm.Sour, form, $"{string.Join(" or ", reached.Select(level => level.Words))} would be right: so sour this vegetable gets");
        return target;
    }

    private double ReadServing(PlanForm form, Cut cut)
    {
        const double least = 0.01, most = 1;
        bool isRead = Amount.MassKilograms.TryRead(form[PlanForm.Serving], null, out double kilograms);
        double litres = kilograms / Servings.KilogramsPerLitre(cut);
        isRead = isRead || Amount.VolumeLitres.TryRead(form[PlanForm.Serving], household.MassUnit == MassUnit.Pound ? "cup" : "ml", out litres);
        if (isRead && litres is >= least and <= most)
            return litres;
        Refuse(PlanForm.Serving, form, "10 ml to 1 l, or its mass, would be right, such as 1/2 cup, 120 ml or 75 g");
        return most;
    }

    private Vessels ReadRoom(PlanForm form)
    {
        IReadOnlyList<Vessels> read = _reader.ReadVessels(PlanForm.Room.InWords, form[PlanForm.Room]);
        if (read is [{ Count: not null } one])
            return one;
        if (read.Count > 0)
            Refuse(PlanForm.Room, form, "how many jars of one size fit there would be right, such as 20 x 1 qt");
        return new Vessels(1, 1);
    }

    private HashSet<IsoDayOfWeek> ReadDays(PlanForm form)
    {
        var days = new HashSet<IsoDayOfWeek>();
        foreach (string word in form[PlanForm.Days].Split([',', ' '], StringSplitOptions.RemoveEmptyEntries))
            if (Enum.TryParse(word, ignoreCase: true, out IsoDayOfWeek day) && day is >= IsoDayOfWeek.Monday and <= IsoDayOfWeek.Sunday)
                days.Add(day);
            else
                _reader.Refuse(PlanForm.Days.InWords, word, "days of the week would be right, such as Saturday,Sunday");
        if (days.Count == 0 && _reader.Refusals.All(refusal => refusal.Field != PlanForm.Days.InWords))
            _reader.Refuse(PlanForm.Days.InWords, "", "at least one day of the week would be right, such as Saturday");
        return days;
    }

    private List<Absence> ReadAway(PlanForm form)
    {
        LocalDate? from = ReadDate(PlanForm.AwayFrom, form), until = ReadDate(PlanForm.AwayUntil, form);
        if (from is null && until is null)
            return [];
        if (from < until)
            return [new Absence(from.Value, until.Value)];
        Refuse(PlanForm.AwayUntil, form, "a day after the first day away would be right");
        return [];
    }

    private WarmMonth? ReadWarm(PlanForm form)
    {
        int month = _reader.ReadWhole(PlanForm.WarmMonth.InWords, form[PlanForm.WarmMonth], 0, 1, 12);
        string by = form[PlanForm.WarmBy];
        if (month == 0 || by.Length == 0)
            return null;
        bool isFahrenheit = by.EndsWith('F') || (household.TemperatureUnit == TemperatureUnit.Fahrenheit && !by.EndsWith('C'));
        double degrees = isFahrenheit ? 1 / 1.8 : 1;
        if (Amount.Number.TryRead(by.TrimEnd('C', 'F', '°', ' '), null, out double read) && Math.Abs(read * degrees) <= 15)
            return new WarmMonth(month, read * degrees);
        Refuse(PlanForm.WarmBy, form, "-15 to 15 degrees Celsius would be right, such as 3 C or 5 F");
        return null;
    }

    private LocalDate? ReadDate(PlanField field, PlanForm form)
    {
        if (form[field].Length == 0)
            return null;
        if (LocalDatePattern.Iso.Parse(form[field]) is { Success: true, Value: var date } && date >= today && date <= today.PlusDays(FarthestDays))
            return date;
        Refuse(field, form, FormattableString.Invariant($"a day from today to {today.PlusDays(FarthestDays):uuuu-MM-dd} would be right"));
        return null;
    }

    private Place? ReadPlace(PlanField field, PlanForm form)
    {
        Place? place = places.FirstOrDefault(each => each.Name.Equals(form[field], StringComparison.OrdinalIgnoreCase));
        if (place is null)
            Refuse(field, form, $"one of {string.Join(", ", places.Select(each => each.Name))} would be right");
        return place;
    }

    private double Read(PlanField field, PlanForm form, Amount kind, string? bareUnit, double low, double high,
        string range, double? ifEmpty = null) =>
        form[field].Length == 0 && ifEmpty is { } usual ? usual : _reader.Read(field.InWords, form[field], kind, bareUnit, low, high, range);

    private void Refuse(PlanField field, PlanForm form, string wouldBeRight) => _reader.Refuse(field.InWords, form[field], wouldBeRight);
}
