using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-227ea, 1,1,1,2,3,3,3-heptafluoropropane. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R227ea
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-227ea",
        Name = "1,1,1,2,3,3,3-heptafluoropropane",
        CasNumber = "431-89-0",
        Source = "Eric W. Lemmon and Roland Span, (2016, submitted), Thermodynamic Properties of R-227ea, R-365mfc, "
            + "R-115, and R13I1, J. Chem. Eng. Data, doi:10.1021/acs.jced.5b00684",
        MolarMass = 0.17002886,
        GasConstant = 8.3144621,
        ReducingTemperature = 374.9,
        ReducingMolarDensity = 3495,
        CriticalTemperature = 374.90000000000003,
        CriticalPressure = 2925242.2339447653,
        CriticalMolarDensity = 3495,
        AcentricFactor = 0.3576412419532815,
        MinimumTemperature = 146.35,
        MaximumTemperature = 475,
        MaximumPressure = 60000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 11.43, 1.07495332088557 },
                { 12.83, 3.809015737530008 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 2.024341, 1, 0.34, 0 },
                { -2.60593, 1, 0.77, 0 },
                { 0.4957216, 2, 0.36, 0 },
                { -0.824082, 2, 0.9, 0 },
                { 0.06543703, 4, 1, 0 },
                { -1.02461, 1, 2.82, 1 },
                { 0.6247065, 3, 2.1, 1 },
                { 0.2997521, 6, 0.9, 1 },
                { -0.353917, 6, 1.13, 1 },
                { -1.232043, 2, 3.8, 2 },
                { -0.8824483, 3, 2.75, 2 },
            },
            Gaussian = new double[,]
            {
                { 0.1349661, 1, 1.5, 0.83, 1.72, 0.414, 1.13 },
                { -0.2662928, 2, 2.5, 2.19, 5.2, 1.051, 0.71 },
                { 0.1764733, 1, 2.5, 2.44, 2.31, 1.226, 1.2 },
                { 0.01536163, 1, 5.4, 3.65, 1.02, 1.7, 1.7 },
                { -0.004667185, 4, 4, 8.88, 5.63, 0.904, 0.546 },
                { -11.70854, 2, 1, 8.23, 50.9, 1.42, 0.896 },
                { 0.9114512, 1, 3.5, 2.01, 1.56, 0.926, 0.747 },
            },
        },
    };
}
