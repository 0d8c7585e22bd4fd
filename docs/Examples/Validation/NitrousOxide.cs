using Refrigerant.Recovery.Fluids;
using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Docs.Validation;

/// <summary>Nitrous oxide, which is no refrigerant of the catalogue but was drained from tanks under measurement. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class NitrousOxide
{
    public static Fluid Fluid { get; } = Fluid.FromModel(new HelmholtzModel(new PureFluidData
    {
        Designation = "R-744A",
        Name = "nitrous oxide",
        CasNumber = "10024-97-2",
        Source = "E.W. Lemmon and R. Span, (2006), Short Fundamental Equations of State for 20 Industrial Fluids, J. "
            + "Chem. Eng. Data, vol. 51, 785-850, doi:10.1021/je050186n",
        MolarMass = 0.0440128,
        GasConstant = 8.314472,
        ReducingTemperature = 309.52,
        ReducingMolarDensity = 10270,
        CriticalTemperature = 309.52,
        CriticalPressure = 7245000,
        CriticalMolarDensity = 10270,
        AcentricFactor = 0.1613,
        MinimumTemperature = 182.33,
        MaximumTemperature = 525,
        MaximumPressure = 50000000,
        IdealGas = new IdealHelmholtz(
            logTau: 2.5,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 2.1769, 2.839881106229 },
                { 1.6145, 7.663478935125356 },
                { 0.48393, 17.598216593435 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.88045, 1, 0.25, 0 },
                { -2.4235, 1, 1.25, 0 },
                { 0.38237, 1, 1.5, 0 },
                { 0.068917, 3, 0.25, 0 },
                { 0.00020367, 7, 0.875, 0 },
                { 0.13122, 1, 2.375, 1 },
                { 0.46032, 2, 2, 1 },
                { -0.0036985, 5, 2.125, 1 },
                { -0.23263, 1, 3.5, 2 },
                { -0.00042859, 1, 6.5, 2 },
                { -0.04281, 4, 4.75, 2 },
                { -0.023038, 2, 12.5, 3 },
            },
        },
    }));
}
