using FermentWatch.Kitchen.Jars;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace FermentWatch.Storage.Records.Tables;

/// <summary>What was put right in the records of jars, and what stood before.</summary>
internal sealed class JarCorrectionTable : IEntityTypeConfiguration<JarCorrection>
{
    public void Configure(EntityTypeBuilder<JarCorrection> builder)
    {
        builder.ToTable("jar_correction");
        builder.Property(correction => correction.Id).ValueGeneratedNever();
    }
}
