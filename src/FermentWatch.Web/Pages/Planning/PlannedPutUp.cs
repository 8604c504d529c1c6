using System.Globalization;
using FermentWatch.Kitchen.Households;
using FermentWatch.Kitchen.Planning;
using FermentWatch.Kitchen.PuttingUp;

namespace FermentWatch.Web.Pages.Planning;

/// <summary>The way from a planned start to the form that puts it up: what is known of it already stands in the address.</summary>
internal static class PlannedPutUp
{
    private const string What = "what", HowMuch = "how_much", Salt = "salt", Vessel = "vessel", Place = "place", Sour = "sour", HowMany = "how_many";

    /// <summary>The address for the vessels of one size.</summary>
    public static string Address(Plan plan, Vessels filled, MassUnit unit)
    {
        Shopping one = Shopping.For([filled with { Count = 1 }], plan.Question.Vegetable.UsualCut, plan.Question.SaltPercent);
        (string Name, string Value)[] words =
        [
            (What, plan.Question.Vegetable.Name), (HowMuch, Grams(one.PreparedKilograms)),
            (Salt, plan.Question.SaltPercent.ToString("0.##", CultureInfo.InvariantCulture)), ("water", Grams(one.WaterKilograms)),
            (Vessel, VesselList.Size(filled.Litres, unit)), (Place, plan.Question.Place), (Sour, plan.Question.Target.ToString()),
            (HowMany, filled.Count!.Value.ToString(CultureInfo.InvariantCulture)),
        ];
        return "put-up?" + string.Join('&', words.Select(word => $"{word.Name}={Uri.EscapeDataString(word.Value)}"));
    }

    /// <summary>The form as an address fills it in; null where it says nothing of a start.</summary>
    public static PutUpForm? Of(IQueryCollection query) => query.ContainsKey(HowMuch) ? new PutUpForm
    {
        What = query[What], HowMuch = query[HowMuch], Salt = $"{query[Salt]} %", AddedWater = query["water"] == "0 g" ? "" : query["water"],
        Vessel = query[Vessel].ToString(), Place = query[Place], Target = query[Sour], HowMany = query[HowMany],
    } : null;

    private static string Grams(double kilograms) => string.Create(CultureInfo.InvariantCulture, $"{1000 * kilograms:0} g");
}
