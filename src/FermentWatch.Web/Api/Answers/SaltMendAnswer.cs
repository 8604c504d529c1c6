using FermentWatch.Acts.Jars;
using FermentWatch.Kinetics.Salt;
using FermentWatch.Kitchen.PuttingUp;
using FermentWatch.Kitchen.Salts;
using Microsoft.AspNetCore.Mvc;
using NodaTime;

namespace FermentWatch.Web.Api.Answers;

/// <summary>What is asked about a jar that was salted wrongly, each as it is typed on the page.</summary>
internal sealed record MendQuery
{
    [FromQuery(Name = "happened")] public string? Happened { get; init; }
    [FromQuery(Name = "went_in")] public string? WentIn { get; init; }
    [FromQuery(Name = "intended")] public string? Intended { get; init; }

    public MendForm ToForm() => new() { Happened = Happened, WentIn = WentIn, Intended = Intended };
}

/// <summary>What a jar that was salted wrongly needs. Per cent are of vegetables and added water together.</summary>
/// <param name="NowPercent">Salt in it, per cent; null where nobody knows.</param>
/// <param name="WantedPercent">What it is brought to, per cent; never below the least for its vegetable.</param>
/// <param name="LowestPercent">From so many per cent on nothing need be done,</param>
/// <param name="HighestPercent">up to so many.</param>
/// <param name="RangeSource">Who says so.</param>
/// <param name="ThrowOutAdvised">Whether it should be thrown out rather than mended; then nothing is said to be added.</param>
/// <param name="IsLate">Whether it had too little salt for more than a day.</param>
/// <param name="SaltToAddGrams">Salt to dissolve in its own brine; null where none is to be added.</param>
/// <param name="BrineToAddGrams">Or strong brine to pour on.</param>
/// <param name="BrineToAddPercent">How strong that is, per cent by mass.</param>
/// <param name="BrineToAddWaterGrams">Water in that brine.</param>
/// <param name="BrineToAddFits">Whether it fits into the vessel beside what is in it.</param>
/// <param name="BrineOutGrams">Brine to pour off each time; null where none is to be taken out.</param>
/// <param name="WaterInGrams">Water to put in its place each time.</param>
/// <param name="TimesCount">How often; null where more often than is any use.</param>
/// <param name="UnsaltedVegetablesGrams">Or unsalted vegetables to mix in.</param>
/// <param name="HoursUntilEven">How long salt takes to even out.</param>
/// <param name="EvenAt">When what went in at packing has.</param>
/// <param name="Headline">What to do.</param>
/// <param name="Standing">What is in it and what it should be.</param>
/// <param name="Steps">How it is done.</param>
/// <param name="Meaning">What it means where it is late or salty, with who says so.</param>
/// <param name="Corrections">Bodies for <c>PUT /jars/{number}</c>, once it was done.</param>
internal sealed record SaltMendAnswer(double? NowPercent, double WantedPercent, double LowestPercent, double HighestPercent, string RangeSource,
    bool ThrowOutAdvised, bool IsLate, double? SaltToAddGrams, double? BrineToAddGrams, double? BrineToAddPercent, double? BrineToAddWaterGrams,
    bool? BrineToAddFits, double? BrineOutGrams, double? WaterInGrams, int? TimesCount, double? UnsaltedVegetablesGrams,
    double HoursUntilEven, Instant EvenAt,
    string Headline, string Standing, IReadOnlyList<string> Steps, IReadOnlyList<string> Meaning, IReadOnlyList<MendCorrectionAnswer> Corrections)
{
    public static SaltMendAnswer Of(SaltMend mend, SaltMendAnswered answered) => new(mend.NowPercent, mend.WantedPercent, mend.Range.LowestPercent,
        mend.Range.HighestPercent, mend.Range.Source, mend.Lateness == SaltLateness.ThrowOut, mend.Lateness != SaltLateness.InTime,
        mend.Adding?.SaltGrams, mend.Adding?.BrineGrams, mend.Adding is null ? null : SaltToAdd.BrinePercent, mend.Adding?.BrineWaterGrams,
        mend.Adding?.BrineFits, mend.Taking?.BrineOutGrams, mend.Taking?.WaterInGrams, mend.Taking?.Times,
        mend.Taking?.VegetablesGrams, mend.HoursUntilEven, mend.EvenAt,
        answered.Words!.Headline, answered.Words.Standing, [.. answered.Words.Steps()], [.. answered.Words.Meaning(), MendWords.SaysNothingElse],
        [.. answered.Records.Select(record => new MendCorrectionAnswer(record.Words, record.Form.Salt!, record.Form.AddedWater,
            record.Form.HowMuch))]);
}

/// <summary>How a jar is put right on record.</summary>
/// <param name="Words">Which way was gone.</param>
/// <param name="Salt">The field of that name, with its unit.</param>
/// <param name="AddedWater">The same; null stays as it is.</param>
/// <param name="HowMuch">The same.</param>
internal sealed record MendCorrectionAnswer(string Words, string Salt, string? AddedWater, string? HowMuch);

/// <summary>What is asked about a brine and a hydrometer.</summary>
internal sealed record BrineQuery
{
    [FromQuery(Name = "scale")] public string? Scale { get; init; }
    [FromQuery(Name = "reading")] public string? Reading { get; init; }
    [FromQuery(Name = "temperature")] public string? Temperature { get; init; }
    [FromQuery(Name = "made_for")] public string? MadeFor { get; init; }
    [FromQuery(Name = "percent")] public string? Percent { get; init; }

    public BrineForm ToForm() => new() { Scale = Scale, Reading = Reading, Temperature = Temperature, MadeFor = MadeFor, Percent = Percent };
}

/// <summary>A brine of salt and water, with what hydrometers show in it.</summary>
/// <param name="Percent">Salt, per cent by mass of the brine.</param>
/// <param name="GramsInALitreOfWater">Salt for each litre of water.</param>
/// <param name="GramsPerLitre">Salt in a litre of the brine at 20 °C.</param>
/// <param name="BrineCelsius">How warm the brine is.</param>
/// <param name="SpecificGravity">Shown by a scale in specific gravity, a ratio without unit.</param>
/// <param name="SpecificGravityMadeForCelsius">The temperature that scale is made for.</param>
/// <param name="DegreesSalometer">Shown by a salometer.</param>
/// <param name="SalometerMadeForCelsius">The temperature it is made for.</param>
/// <param name="DegreesBaume">Shown in degrees Baumé.</param>
/// <param name="BaumeMadeForCelsius">The temperature that scale is made for.</param>
/// <param name="Caution">What juices do to a reading.</param>
internal sealed record BrineAnswer(double Percent, double GramsInALitreOfWater, double GramsPerLitre, double BrineCelsius, double SpecificGravity,
    double SpecificGravityMadeForCelsius, double DegreesSalometer, double SalometerMadeForCelsius, double DegreesBaume, double BaumeMadeForCelsius,
    string Caution)
{
    public static BrineAnswer Of(BrineShown brine)
    {
        var shown = brine.Shown.ToDictionary(each => each.Scale);
        return new BrineAnswer(brine.Percent, brine.GramsInALitreOfWater, brine.GramsPerLitre, brine.BrineCelsius,
            shown[BrineScale.SpecificGravity].Reading, shown[BrineScale.SpecificGravity].MadeForCelsius,
            shown[BrineScale.Salometer].Reading, shown[BrineScale.Salometer].MadeForCelsius,
            shown[BrineScale.Baume].Reading, shown[BrineScale.Baume].MadeForCelsius, BrineShown.JuicesDisturb);
    }
}
