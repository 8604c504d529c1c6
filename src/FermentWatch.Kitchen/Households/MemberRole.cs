namespace FermentWatch.Kitchen.Households;

/// <summary>What a person may do.</summary>
public enum MemberRole
{
    /// <summary>Everything.</summary>
    Adult = 1,

    /// <summary>Look at jars and report; pH, first tastes and trouble are for adults.</summary>
    Child = 2,
}
