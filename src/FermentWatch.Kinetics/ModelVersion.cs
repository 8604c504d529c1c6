namespace FermentWatch.Kinetics;

/// <summary>Names the equations, parameters and priors in force. Changed with every change that can move a forecast by a bit.</summary>
public static class ModelVersion
{
    public const string Current = "2026.11-1";
}
