namespace FermentWatch.Kitchen.Sensors;

/// <summary>Whoever reads payloads by rules says beforehand whether a rule can be read by.</summary>
public interface ISourceRuleCheck
{
    /// <summary>Everything that is wrong with a rule, and what would be right; empty where it can be used.</summary>
    IEnumerable<string> Errors(SourceRule rule);
}
