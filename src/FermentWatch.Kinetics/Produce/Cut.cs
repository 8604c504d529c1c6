namespace FermentWatch.Kinetics.Produce;

/// <summary>How the vegetables were cut: it decides how fast sugar and buffer leave the pieces and acid enters them.</summary>
public enum Cut
{
    /// <summary>Shreds of a few millimetres, salted until they give juice: solutes leave in hours.</summary>
    Shredded,

    /// <summary>Whole or quartered leaves wilted in salt: solutes leave within half a day.</summary>
    SaltedLeaves,

    /// <summary>Slices of about half a centimetre: solutes leave in about a day.</summary>
    Sliced,

    /// <summary>Cubes, sticks and chunks of one to three centimetres: a day or two.</summary>
    Pieces,

    /// <summary>Whole small vegetables, for example cucumbers: several days.</summary>
    Whole,
}
