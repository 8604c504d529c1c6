using FermentWatch.Kinetics.Produce;

namespace FermentWatch.Kitchen.PuttingUp;

/// <summary>How a vegetable is usually cut. Common practice, no source.</summary>
public static class UsualCut
{
    public static Cut Of(Vegetable vegetable) => vegetable.Name switch
    {
        "napa" or "pak choi" => Cut.SaltedLeaves,
        "cucumber" => Cut.Whole,
        "carrot" or "beet" => Cut.Sliced,
        "daikon" or "radish" or "turnip" => Cut.Pieces,
        _ => Cut.Shredded,
    };
}
