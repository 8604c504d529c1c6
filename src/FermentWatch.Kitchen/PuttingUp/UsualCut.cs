using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>How a vegetable is usually cut. Common practice, no source.</summary>
public static class UsualCut
{
    public static Cut Of(Vegetable vegetable) => Of(vegetable.Name);

    /// <summary>The same by name; of what nobody knows the stricter: pieces, whose brine alone does not speak for them.</summary>
    public static Cut Of(string produce) => produce switch
    {
        _ when !Vegetable.TryFind(produce, out _) => Cut.Pieces,
        "napa" or "pak choi" => Cut.SaltedLeaves,
        "cucumber" or "green beans" or "garlic" => Cut.Whole,
        "carrot" or "beet" or "onion" or "celery" or "kohlrabi" or "zucchini" or "red pepper" or "green pepper" => Cut.Sliced,
        "daikon" or "radish" or "turnip" or "rutabaga" or "cauliflower" or "brussels sprouts" or "green tomato" or "jalapeno" => Cut.Pieces,
        _ => Cut.Shredded,
    };
}
