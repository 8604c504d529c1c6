using FermentWatch.Kitchen.Sensors;

namespace FermentWatch.Intake.Sources;

/// <inheritdoc/>
public sealed class SourceRuleCheck : ISourceRuleCheck
{
    public IEnumerable<string> Errors(SourceRule rule) => SourceReader.Errors(rule);
}
