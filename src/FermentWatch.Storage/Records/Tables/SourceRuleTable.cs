using FermentWatch.Kitchen.Sensors;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>Rules for sensors that were not made for us.</summary>
internal sealed class SourceRuleTable : IEntityTypeConfiguration<SourceRule>
{
    /// <summary>The place of a rule in the order in which they were added; the rules themselves have no use for it.</summary>
    internal const string Position = "Position";

    public void Configure(EntityTypeBuilder<SourceRule> builder)
    {
        builder.ToTable("source_rule");
        builder.Property(rule => rule.Id).ValueGeneratedNever();
        builder.Property<int>(Position);
        builder.HasIndex(Position).IsUnique();
    }
}
