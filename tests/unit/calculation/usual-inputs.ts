/** Inputs by calculation that give a result, taken from the tests: what odd ones are made from. */
export const usualInputs: Record<string, unknown[]> = {
  'blocking-load': [
    {"specimens": [{"loadG": 250}, {"loadG": 90, "separated": false}], "areaCm2": 50, "limitG": 200},
    {"specimens": [{"separated": true, "grade": 2}, {"separated": true, "grade": 2}, {"separated": true, "grade": 1}, {"separated": true, "grade": 2}, {"separated": true, "grade": 3}], "areaCm2": 100},
  ],
  'bond-build': [
    {"readings": [{"hours": 1, "strengthNPer15mm": 0.5798974993947468, "mode": "adhesive"}, {"hours": 3, "strengthNPer15mm": 0.9747675612269613, "mode": "adhesive"}, {"hours": 6, "strengthNPer15mm": 1.3711631813040337, "mode": "adhesive"}, {"hours": 12, "strengthNPer15mm": 2.0244784964647087, "mode": "adhesive"}, {"hours": 24, "strengthNPer15mm": 2.5988218984610896, "mode": "adhesive"}, {"hours": 48, "strengthNPer15mm": 2.9641166365027662, "mode": "adhesive"}, {"hours": 72, "strengthNPer15mm": 2.9718071098440446, "mode": "adhesive"}], "requiredNPer15mm": 2},
    {"readings": [{"hours": 1, "strengthNPer15mm": 2}, {"hours": 2, "strengthNPer15mm": 2}, {"hours": 4, "strengthNPer15mm": 2}, {"hours": 6, "strengthNPer15mm": 2}, {"hours": 9, "strengthNPer15mm": 2}, {"hours": 12, "strengthNPer15mm": 2}, {"hours": 18, "strengthNPer15mm": 2}, {"hours": 24, "strengthNPer15mm": 2}, {"hours": 36, "strengthNPer15mm": 2}, {"hours": 48, "strengthNPer15mm": 2}, {"hours": 72, "strengthNPer15mm": 2}, {"hours": 96, "strengthNPer15mm": 2}], "requiredNPer15mm": 3},
    {"readings": [{"hours": 1, "strengthNPer15mm": 0.165, "mode": "adhesive"}, {"hours": 2, "strengthNPer15mm": 0.349, "mode": "adhesive"}, {"hours": 4, "strengthNPer15mm": 0.63, "mode": "adhesive"}, {"hours": 6, "strengthNPer15mm": 0.917, "mode": "adhesive"}, {"hours": 8, "strengthNPer15mm": 1.134, "mode": "adhesive"}, {"hours": 12, "strengthNPer15mm": 1.55, "mode": "adhesive"}, {"hours": 16, "strengthNPer15mm": 1.841, "mode": "adhesive"}, {"hours": 20, "strengthNPer15mm": 2.106, "mode": "adhesive"}, {"hours": 24, "strengthNPer15mm": 2.2790000000000004, "mode": "adhesive"}], "requiredNPer15mm": 2.4},
  ],
  'bond-strength': [
    {"specimens": [{"strengthNPer15mm": 3, "mode": "adhesive"}, {"strengthNPer15mm": 3.1, "mode": "adhesive"}], "requiredNPer15mm": 2.5},
    {"specimens": [{"forceN": 4.2, "widthMm": 30, "mode": "adhesive"}, {"forceN": 4.8, "widthMm": 30, "mode": "adhesive"}, {"forceN": 3.8, "widthMm": 30, "mode": "adhesive"}, {"forceN": 4.4, "widthMm": 30, "mode": "adhesive"}, {"forceN": 4.8, "widthMm": 30, "mode": "adhesive"}]},
    {"specimens": [{"strengthNPer15mm": 1.6, "mode": "adhesive"}], "requiredNPer15mm": 1},
  ],
  'calibration': [
    {"x": [1, 2, 4, 8, 16], "y": [2.02, 3.96, 8.1, 15.7, 33], "unknown": [[3]], "weighting": "1/x"},
  ],
  'capability': [
    {"values": [3, 3.1, 2.9, 3.05, 2.95, 3.2, 3, 3.1], "lowerLimit": 2.5, "unit": "N/15 mm"},
    {"values": [3, 1], "lowerLimit": -4, "upperLimit": 4},
  ],
  'censored-normal': [
    {"observations": [{"exact": 3}, {"low": 3.1}, {"low": 2.8, "high": 3.4}, {"high": 3.2}, {"exact": 3.3}], "unit": "N/15 mm"},
    {"observations": [{"low": 38, "high": 40}]},
  ],
  'coat-weight': [
    {"specimens": [{"areaM2": 0.01, "coatedG": 0.1852, "bareG": 0.1684}], "solidsPct": 30, "dryDensityGCm3": 1.3, "readabilityMg": 0.1},
  ],
  'coat-weight-strength': [
    {"drawdowns": [{"coatWeightGM2": 1, "reading": 0.87}, {"coatWeightGM2": 1.5, "reading": 1.15}, {"coatWeightGM2": 2, "reading": 1.4}, {"coatWeightGM2": 2.5, "reading": 1.56}, {"coatWeightGM2": 3, "reading": 1.71}], "present": 1.2, "target": 1.95, "model": "linear"},
    {"drawdowns": [{"coatWeightGM2": 1, "reading": 0.87}, {"coatWeightGM2": 1.5, "reading": 1.15}, {"coatWeightGM2": 2, "reading": 1.4}, {"coatWeightGM2": 2.5, "reading": 1.56}, {"coatWeightGM2": 3, "reading": 1.71}], "quantity": "density", "present": 1.2, "target": 1.3},
    {"drawdowns": [{"coatWeightGM2": 0.8, "reading": 0.7252958987215935}, {"coatWeightGM2": 1.2, "reading": 0.9926144005931418}, {"coatWeightGM2": 1.8, "reading": 1.305546748570682}, {"coatWeightGM2": 2.4, "reading": 1.5373727337931555}, {"coatWeightGM2": 3, "reading": 1.7091136476734545}], "present": 1.390665229422827, "target": 1.5696894469075817, "coatWeightChangePct": 25},
  ],
  'colour-difference': [
    {"reference": [54.1222472584533, 51.47560922038286, 52.12906509593762], "sample": [[54.1222472584533, 51.47560922038286, 52.12906509593762], [53.67645507216085, 51.797164708577036, 51.38076159021835], [53.2301612866717, 52.09531185110527, 50.630503769948795], [52.78326815339615, 52.37137360696437, 49.87839457790415]], "labels": ["1", "2", "3", "4"], "run": [0, 2000, 4000, 6000], "runUnit": "m", "cmc": {"l": 2, "c": 1}, "tolerance": {"on": "deltaE00", "limit": 1}, "sampleLight": {"illuminant": "D50", "observer": 2}, "level": 0.95},
    {"reference": [50, 20, 30], "sample": [49, 20, 30], "referenceLight": {"illuminant": "D50", "observer": 2}, "sampleLight": {"illuminant": "D50", "observer": 2, "condition": "M1"}},
    {"reference": [50, 20, 30], "sample": [[49, 20, 31], [48.5, 20.5, 30.5], [48, 21, 30]], "labels": ["start", "middle", "end"], "tolerance": {"limit": 1.5}},
  ],
  'colour-strength': [
    {"standard": [0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15, 0.15], "sample": [[0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12, 0.12]], "substrate": [0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85, 0.85], "scale": "fraction", "method": "summed", "wavelengthsNm": [400, 410, 420, 430, 440, 450, 460, 470, 480, 490, 500, 510, 520, 530, 540, 550, 560, 570, 580, 590, 600, 610, 620, 630, 640, 650, 660, 670, 680, 690, 700]},
    {"sample": [12, 12.4], "standard": 15, "substrate": 85, "scale": "percent"},
    {"sample": 0.9, "standard": 0.3, "substrate": 0.85},
  ],
  'compare-trials': [
    {"groups": [{"name": "A", "values": [2.9, {"atLeast": 3.2}, 3.1, {"atLeast": 3}, 3.3]}, {"name": "B", "values": [2.1, 2.4, 2.5, {"low": 2, "high": 2.4}, {"atMost": 2.6}]}], "control": "B"},
    {"kind": "grade", "scale": {"lowest": 1, "highest": 10}, "groups": [{"name": "A", "values": [1, 7]}, {"name": "B", "values": [4]}]},
    {"groups": [{"name": "R0", "values": [70, 71, 69, 70.5]}, {"name": "R1", "values": [84, 85, 84.5, 85.5]}], "unit": "%"},
  ],
  'contact-angle': [
    {"model": "wu", "liquids": [{"name": "water", "dispersiveMNm": 22.1, "polarMNm": 50.7, "anglesDeg": [111.4355380038856]}, {"name": "diiodomethane", "dispersiveMNm": 44.1, "polarMNm": 6.7, "anglesDeg": [87.990305467436]}, {"name": "third", "dispersiveMNm": 29, "polarMNm": 19, "anglesDeg": [88.6017154778337]}]},
    {"model": "owens-wendt", "liquidSet": "owens-wendt", "liquids": [{"name": "water", "anglesDeg": [81]}, {"name": "diiodomethane", "anglesDeg": [38]}]},
    {"model": "equation-of-state", "liquids": [{"name": "water", "totalMNm": 72.7, "anglesDeg": [88.42]}]},
  ],
  'control-chart': [
    {"values": [3, 3.1, 2.9, 3.05, 2.95, 3.2, 3, 3.1], "chart": "individuals", "unit": "N/15 mm"},
    {"subgroups": [[10.2, 9.9, 10.4, 10, 10.1], [9.8, 10.3, 10, 10.2, 9.7], [10.1, 10.6, 9.9, 10.3, 10.2]]},
  ],
  'crinkle': [
    {"specimens": [{"grade": 5, "removedPct": 0}, {"grade": 5, "removedPct": 0}, {"grade": 4, "removedPct": 0.5}, {"grade": 5, "removedPct": 0}], "flexes": 10},
  ],
  'cure-depth': [
    {"readings": [{"doseMJPerCm2": 20, "curedUm": 2.7}, {"doseMJPerCm2": 20, "curedUm": 2.6}, {"doseMJPerCm2": 20, "curedUm": 2.5}, {"doseMJPerCm2": 40, "curedUm": 5.7}, {"doseMJPerCm2": 40, "curedUm": 5.4}, {"doseMJPerCm2": 40, "curedUm": 5.7}, {"doseMJPerCm2": 80, "curedUm": 8}, {"doseMJPerCm2": 80, "curedUm": 9}, {"doseMJPerCm2": 80, "curedUm": 8.1}, {"doseMJPerCm2": 160, "curedUm": 10.9}, {"doseMJPerCm2": 160, "curedUm": 11.5}, {"doseMJPerCm2": 160, "curedUm": 11.3}], "filmUm": 6, "drawdownUm": 50, "workingDoseMJPerCm2": 80},
  ],
  'cure-rubs': [
    {"specimens": [{"doubleRubs": 38, "brokeThrough": true}, {"doubleRubs": 61, "brokeThrough": true}, {"doubleRubs": 100, "brokeThrough": false}, {"doubleRubs": 74, "brokeThrough": true}, {"doubleRubs": 100, "brokeThrough": false}], "requiredDoubleRubs": 50},
  ],
  'density': [
    {"read": {"cyan": [1.4, 1.42], "visual": [1.7, 1.68]}, "status": "E", "basis": "minus-paper"},
    {"status": "E", "read": {"cyan": [1.4, 1.42]}, "paper": {"cyan": 0.1}},
    {"status": "E", "basis": "minus-paper", "read": {"yellow": -0.01}},
  ],
  'desirability': [
    {"responses": [{"name": "lamination-bond/mean", "goal": "target", "target": 2.8, "low": 2, "high": 4, "importance": 1}], "trials": [{"name": "R0", "values": [3]}, {"name": "R1", "values": [4]}, {"name": "R2", "values": [2]}]},
    {"responses": [{"name": "lamination-bond/mean", "goal": "higher", "target": 4, "low": 3, "importance": 1}], "trials": [{"name": "R0", "values": [3]}, {"name": "R1", "values": [4]}, {"name": "R2", "values": [3.1]}]},
  ],
  'equivalence': [
    {"a": [3, 3.1, 3.2], "b": [2.9, 3, 3.1], "lowerBound": -0.5, "upperBound": 0.5, "unit": "N/15 mm", "level": 0.95},
    {"a": [2, 0], "b": [-1, 0], "lowerBound": -1, "upperBound": 2, "design": "welch"},
  ],
  'fade-life': [
    {"readings": [{"exposure": 0, "series": "yellow 1", "retained": 100}, {"exposure": 24, "series": "yellow 1", "retained": 96.3302752293578}, {"exposure": 48, "series": "yellow 1", "retained": 91.74311926605503}, {"exposure": 0, "series": "yellow 2", "retained": 100}, {"exposure": 24, "series": "yellow 2", "retained": 96.3302752293578}, {"exposure": 48, "series": "yellow 2", "retained": 92.66055045871559}, {"exposure": 0, "series": "yellow 3", "retained": 100}, {"exposure": 24, "series": "yellow 3", "retained": 97.24770642201834}, {"exposure": 48, "series": "yellow 3", "retained": 92.66055045871559}], "retainedAs": "percent", "endpoint": {"retentionPct": 70}, "exposureUnit": "h", "irradianceWPerM2": 42, "level": 0.95},
    {"readings": [{"exposure": 0, "deltaE": 0}, {"exposure": 40, "deltaE": 1.6959623910572716}, {"exposure": 80, "deltaE": 6.5963955408355375}], "endpoint": {"deltaE": 5}, "exposureUnit": "h", "level": 0.95},
    {"readings": [{"exposure": 0, "retained": 1}, {"exposure": 50, "retained": 0.6}, {"exposure": 100, "retained": 0.41}, {"exposure": 150, "retained": 0.3}], "exposureUnit": "MJ/m²", "yearlyDoseMJPerM2": 10},
  ],
  'fade-retention': [
    {"lab": {"before": [60, 0, 0], "after": [56.6, 0, 0]}, "endpoint": {"greyScale": 3, "deltaE00": 10}},
    {"density": {"before": 1, "after": 0.85, "basis": "minus-paper"}, "endpoint": {"retentionPct": 90}},
    {"lab": {"before": [60, 0, 0], "after": [56.6, 0, 0]}, "blueWool": [{"reference": 3, "deltaEF": 2}]},
  ],
  'fit': [
    {"model": "Misra1a", "x": [77.6, 114.9, 141.1, 190.8, 239.9, 289, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760], "y": [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78], "start": [500, 0.0001]},
    {"model": "MGH10", "x": [50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100, 105, 110, 115, 120, 125], "y": [34780, 28610, 23650, 19630, 16370, 13720, 11540, 9744, 8261, 7030, 6005, 5147, 4427, 3820, 3307, 2872], "start": [[2, 400000, 25000], [0.02, 4000, 250]]},
  ],
  'fluid-recipe': [
    {"targetMNm": 38, "batchMl": 100},
  ],
  'formulation': [
    {"components": [{"name": "R7 as delivered", "parts": 100, "solidsPct": 38}], "batchKg": 80, "letDown": {"diluent": {"name": "ethyl acetate", "solidsPct": 0}, "targetMm2S": 75.11349999999999, "additions": [{"pct": 0, "mm2S": 207.55349999999999}, {"pct": 4.997149914497435, "mm2S": 153.65349999999998}, {"pct": 10.007199424046076, "mm2S": 112.84349999999998}, {"pct": 14.994899693981639, "mm2S": 86.2785}, {"pct": 20, "mm2S": 64.7185}]}},
    {"components": [{"name": "Binder", "parts": 50, "solidsPct": 40, "costPerKg": 3}, {"name": "Pigment", "parts": 12, "solidsPct": 100, "costPerKg": 11}, {"name": "Wax", "parts": 3, "solidsPct": 100, "costPerKg": 5}, {"name": "Ester solvent", "parts": 35, "solidsPct": 0, "costPerKg": 1.2}], "letDown": {"inkStrengthPct": 125, "targetStrengthPct": 100, "diluent": {"name": "Extender", "solidsPct": 35, "costPerKg": 2}}},
    {"components": [{"name": "Varnish, low migration", "parts": 52, "solidsPct": 40, "costPerKg": 3.9}, {"name": "Yellow pigment", "parts": 11, "solidsPct": 100, "costPerKg": 12.4}, {"name": "Wax dispersion 30", "parts": 3.3, "solidsPct": 30, "costPerKg": 6.2}, {"name": "Ester solvent", "parts": 33.7, "solidsPct": 0, "costPerKg": 1.3}], "control": [{"name": "Varnish, present series", "parts": 52}, {"name": "Yellow pigment", "parts": 11}, {"name": "Wax dispersion 30", "parts": 6.7}, {"name": "Ester solvent", "parts": 30.3}]},
  ],
  'friction': [
    {"sledMassG": 200, "specimens": [{"staticN": 0.51, "kineticN": 0.4}, {"staticN": 0.52, "kineticN": 0.4}, {"staticN": 0.51, "kineticN": 0.4}, {"staticN": 0.54, "kineticN": 0.42}, {"staticN": 0.48, "kineticN": 0.37}]},
  ],
  'gloss': [
    {"angleDeg": 60, "values": [52, 53], "after": [41, 42.5]},
    {"angleDeg": 85, "values": [60, 62], "gloss60": 30},
  ],
  'heat-resistance': [
    {"steps": [{"celsius": 62, "tested": 7, "failed": 4}, {"celsius": 67, "tested": 5, "failed": 4}]},
  ],
  'hue-error-greyness': [
    {"red": 1, "green": 1, "blue": 1},
    {"red": -0.02, "green": 1.3, "blue": 0.6},
    {"red": [0.15], "green": [1.3], "blue": [0.62]},
  ],
  'in-house': [
    {"readings": [{"key": "grade", "label": "Grade", "unit": "", "kind": "grade", "values": [5, 4, 5, 5, 4, 5], "grades": [{"grade": 0, "meaning": "bare film under the thumb"}, {"grade": 1, "meaning": "more of the ink gone than left"}, {"grade": 2, "meaning": "holes that one sees at arm’s length"}, {"grade": 3, "meaning": "thin spots against the light, no holes"}, {"grade": 4, "meaning": "cloth marked, print whole"}, {"grade": 5, "meaning": "nothing to be seen on print or cloth"}]}], "properties": [{"key": "grade", "title": "Grade of rub", "reading": "grade", "statistic": "median-grade"}], "replicates": 6},
  ],
  'ink-fit': [
    {"film": {"dispersiveMNm": 32, "polarMNm": 6}, "ink": {"dispersiveMNm": 24, "polarMNm": 4}},
    {"film": {"totalMNm": 38}, "ink": {"totalMNm": 30}},
  ],
  'jaw-pick-off': [
    {"seals": [{"celsius": 150, "grade": 5}, {"celsius": 150, "grade": 5}, {"celsius": 150, "grade": 5}, {"celsius": 160, "grade": 5}, {"celsius": 160, "grade": 5}, {"celsius": 160, "grade": 5}, {"celsius": 170, "grade": 5}, {"celsius": 170, "grade": 5}, {"celsius": 170, "grade": 5}, {"celsius": 180, "grade": 5}, {"celsius": 180, "grade": 4}, {"celsius": 180, "grade": 5}, {"celsius": 190, "grade": 4}, {"celsius": 190, "grade": 3}, {"celsius": 190, "grade": 4}, {"celsius": 200, "grade": 2}, {"celsius": 200, "grade": 2}, {"celsius": 200, "grade": 2}], "sealingC": 170, "pickedBelow": 5},
  ],
  'kaplan-meier': [
    {"times": [5, 6, 7], "events": [true, false, false]},
    {"times": [10, 7, 32, 23, 22, 6, 16, 34, 32, 25, 11, 20, 19, 6, 17, 35, 6, 13, 9, 6, 10], "events": [1, 1, 0, 1, 1, 1, 1, 0, 0, 0, 0, 0, 0, 1, 0, 0, 1, 1, 0, 0, 0]},
  ],
  'lamination-recheck': [
    {"places": [{"hours": 2, "acrossMm": 60, "alongM": 3, "coveragePct": 0, "bubbles": 0, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 2, "acrossMm": 240, "alongM": 3.3, "coveragePct": 30, "bubbles": 0, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 2, "acrossMm": 430, "alongM": 3.6, "coveragePct": 100, "bubbles": 1, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 2, "acrossMm": 610, "alongM": 3.9, "coveragePct": 100, "bubbles": 1, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 2, "acrossMm": 800, "alongM": 4.2, "coveragePct": 160, "bubbles": 3, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 2, "acrossMm": 1040, "alongM": 4.5, "coveragePct": 0, "bubbles": 0, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 60, "alongM": 6, "coveragePct": 0, "bubbles": 1, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 240, "alongM": 6.3, "coveragePct": 30, "bubbles": 0, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 430, "alongM": 6.6, "coveragePct": 100, "bubbles": 2, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 610, "alongM": 6.9, "coveragePct": 100, "bubbles": 1, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 800, "alongM": 7.2, "coveragePct": 160, "bubbles": 7, "tunnels": 0, "delaminations": 0, "areaCm2": 400}, {"hours": 24, "acrossMm": 1040, "alongM": 7.5, "coveragePct": 0, "bubbles": 0, "tunnels": 1, "delaminations": 0, "areaCm2": 400}], "webWidthMm": 1100},
  ],
  'light-exposure': [
    {"readings": [{"series": "yellow 1", "exposure": 0, "density": 1.09}, {"series": "yellow 1", "exposure": 24, "density": 1.05}, {"series": "yellow 1", "exposure": 48, "density": 1}, {"series": "yellow 2", "exposure": 0, "density": 1.09}, {"series": "yellow 2", "exposure": 24, "density": 1.05}, {"series": "yellow 2", "exposure": 48, "density": 1.01}, {"series": "yellow 3", "exposure": 0, "density": 1.09}, {"series": "yellow 3", "exposure": 24, "density": 1.06}, {"series": "yellow 3", "exposure": 48, "density": 1.01}], "exposureUnit": "h", "irradianceWPerM2": 42, "densityBasis": "minus-paper", "endpointOn": "retention", "endpoint": {"retentionPct": 70}},
    {"readings": [{"colour": "yellow", "exposure": 0, "lab": [50, 0, 0]}, {"colour": "yellow", "exposure": 40, "lab": [51.7, 0, 0]}, {"colour": "yellow", "exposure": 80, "lab": [56.8, 0, 0]}, {"colour": "cyan", "exposure": 0, "lab": [50, 0, 0]}, {"colour": "cyan", "exposure": 40, "lab": [50.4, 0, 0]}, {"colour": "cyan", "exposure": 80, "lab": [51.7, 0, 0]}, {"blueWool": 3, "exposure": 0, "lab": [50, 0, 0]}, {"blueWool": 3, "exposure": 40, "lab": [56.8, 0, 0]}, {"blueWool": 3, "exposure": 80, "lab": [63.6, 0, 0]}, {"blueWool": 4, "exposure": 0, "lab": [50, 0, 0]}, {"blueWool": 4, "exposure": 40, "lab": [51.7, 0, 0]}, {"blueWool": 4, "exposure": 80, "lab": [56.8, 0, 0]}, {"blueWool": 5, "exposure": 0, "lab": [50, 0, 0]}, {"blueWool": 5, "exposure": 40, "lab": [50.8, 0, 0]}, {"blueWool": 5, "exposure": 80, "lab": [51.7, 0, 0]}], "endpointOn": "deltaE00", "endpoint": {"deltaE00": 5}},
    {"readings": [{"exposure": 0, "lab": [50, 0, 0]}, {"exposure": 40, "lab": [51.7, 0, 0]}, {"exposure": 80, "lab": [56.8, 0, 0]}, {"blueWool": 4, "exposure": 0, "lab": [50, 0, 0]}, {"blueWool": 4, "exposure": 40, "lab": [51.7, 0, 0]}]},
  ],
  'match-by-eye': [
    {"comparisons": [{"grade": 4, "secondGrade": 4.5}, {"grade": 3.5, "secondGrade": 4}]},
  ],
  'measured-colour': [
    {"reference": {"name": "R0", "colour": {"lab": [48, 62, 40]}, "light": {"illuminant": "D50", "observer": 2}}, "sample": [{"lab": [47, 61, 41]}, {"lab": [47.4, 60.5, 41.2]}, {"lab": [46.8, 61.4, 40.7]}], "sampleLight": {"illuminant": "D50", "observer": 2}, "labels": ["1", "2", "3"], "others": [], "secondIlluminant": "A", "cmc": {"l": 2, "c": 1}, "tolerance": {"on": "deltaECMC", "limit": 1.5}},
    {"reference": {"name": "Typed red", "colour": {"lab": [45, 55, 30]}, "light": {"illuminant": "D65", "observer": 10, "condition": "M1"}}, "sample": [{"wavelengthsNm": [400, 410, 420, 430, 440, 450, 460, 470, 480, 490, 500, 510, 520, 530, 540, 550, 560, 570, 580, 590, 600, 610, 620, 630, 640, 650, 660, 670, 680, 690, 700], "reflectance": [4, 4, 4, 4, 4, 4, 4.01, 4.02, 4.03, 4.06, 4.13, 4.26, 4.53, 5.08, 6.16, 8.26, 12.1, 18.51, 27.67, 38.26, 47.86, 54.84, 59.14, 61.52, 62.76, 63.39, 63.7, 63.85, 63.93, 63.96, 63.98], "scale": "percent"}], "sampleLight": {"illuminant": "D65", "observer": 10}, "labels": ["1"], "others": [], "secondIlluminant": "A", "cmc": {"l": 2, "c": 1}},
    {"reference": {"name": "R0", "colour": {"lab": [48, 62, 40]}, "light": {"illuminant": "D50", "observer": 2}}, "sample": [{"lab": [47, 61, 41]}, {"lab": [47.4, 60.5, 41.2]}, {"lab": [46.8, 61.4, 40.7]}], "sampleLight": {"illuminant": "D50", "observer": 2, "condition": "M1"}, "labels": ["1", "2", "3"], "others": [], "secondIlluminant": "A", "cmc": {"l": 2, "c": 1}},
  ],
  'measurement-study': [
    {"readings": [{"appraiser": "P0", "part": 0, "trial": 0, "grade": 1}, {"appraiser": "P0", "part": 0, "trial": 1, "grade": 3}, {"appraiser": "P0", "part": 1, "trial": 0, "grade": 1}, {"appraiser": "P0", "part": 1, "trial": 1, "grade": 1}, {"appraiser": "P0", "part": 2, "trial": 0, "grade": 2}, {"appraiser": "P0", "part": 2, "trial": 1, "grade": 0}, {"appraiser": "P1", "part": 0, "trial": 0, "grade": 1}, {"appraiser": "P1", "part": 0, "trial": 1, "grade": -1}, {"appraiser": "P1", "part": 1, "trial": 0, "grade": 1}, {"appraiser": "P1", "part": 1, "trial": 1, "grade": 1}, {"appraiser": "P1", "part": 2, "trial": 0, "grade": 0}, {"appraiser": "P1", "part": 2, "trial": 1, "grade": 1}]},
    {"readings": [{"appraiser": "P0", "part": 0, "trial": 0, "value": 2}, {"appraiser": "P0", "part": 0, "trial": 1, "value": 1}, {"appraiser": "P0", "part": 1, "trial": 0, "value": 1}, {"appraiser": "P0", "part": 1, "trial": 1, "value": 1}, {"appraiser": "P0", "part": 2, "trial": 0, "value": 0}, {"appraiser": "P0", "part": 2, "trial": 1, "value": 0}, {"appraiser": "P1", "part": 0, "trial": 0, "value": 0}, {"appraiser": "P1", "part": 0, "trial": 1, "value": 2}, {"appraiser": "P1", "part": 1, "trial": 0, "value": 1}, {"appraiser": "P1", "part": 1, "trial": 1, "value": 2}, {"appraiser": "P1", "part": 2, "trial": 0, "value": -1}, {"appraiser": "P1", "part": 2, "trial": 1, "value": -3}]},
  ],
  'metamerism': [
    {"wavelengthsNm": [400, 420, 440, 460, 480, 500, 520, 540, 560, 580, 600, 620, 640, 660, 680, 700], "standard": [0.04, 0.04, 0.04002, 0.04008, 0.040330000000000005, 0.04138, 0.045720000000000004, 0.06318, 0.12616, 0.28699, 0.48692, 0.59449, 0.62842, 0.6371800000000001, 0.63932, 0.63984], "sample": [0.04, 0.04, 0.04002, 0.040060000000000005, 0.04027, 0.041120000000000004, 0.04463, 0.05885, 0.11152, 0.25654, 0.46124000000000004, 0.58461, 0.62572, 0.63652, 0.63916, 0.6397999999999999], "scale": "fraction", "reference": "D50", "test": "A", "observer": 2},
  ],
  'odour-panel': [
    {"assessors": 12, "correct": 9, "alpha": 0.05},
    {"intensities": [1.5, 1, 2, 1, 1, 1.5, 1, 2], "controlIntensities": [0.5, 0.5, 0, 0, 0, 0.5, 0.5, 0.5]},
  ],
  'opacity': [
    {"overBlackY": 80, "overWhiteY": 89.5, "whiteBackingY": 60},
    {"overBlackY": [45.2], "overWhiteY": [81.6], "whiteBackingY": 89},
  ],
  'peel-trace': [
    {"widthMm": 15, "points": [[0, 1], [1, 2], [2, 3], [3, 4]], "fromMm": 1, "toMm": 2},
    {"widthMm": 30, "points": [[0, 1], [1, 4], [2, 2], [3, 3]], "discardStartMm": 0, "tareN": 0.5},
    {"widthMm": 15, "points": [[0, 0.14795894413147637], [0.1, 0.22630825220403655]], "unit": "N/m"},
  ],
  'print-contrast': [
    {"solid": [1.5, 1.52], "tint": [0.9, 0.93], "patchPct": 75, "paper": 0},
  ],
  'regression': [
    {"x": [0, 2, 4, 6, 8, 10, 12], "y": [2.1, 5, 9, 12.6, 17.3, 21, 24.7], "intercept": false},
    {"x": [1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2], "y": [2.9, 3, 3.1, 3.9, 4, 4.1, 2.4, 2.5, 2.6, 3, 3.1, 3.2], "level": 0.95},
    {"x": [[0, 2, 4, 6, 8, 10, 12], [0, 4, 16, 36, 64, 100, 144]], "y": [2.1, 5, 9, 12.6, 17.3, 21, 24.7]},
  ],
  'removed-area': [
    {"grey": [[195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 45, 45, 45, 45, 45, 45, 45, 45, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 45, 45, 45, 45, 45, 45, 45, 45, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 45, 45, 45, 45, 45, 45, 45, 45, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 45, 45, 45, 45, 45, 45, 45, 45, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 45, 45, 45, 45, 45, 45, 45, 45, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195], [195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195, 195]], "removed": "darker", "region": {"kind": "rectangle", "x": 0, "y": 6, "width": 20, "height": 5}, "threshold": 120},
  ],
  'residual-solvent': [
    {"solvents": [{"name": "ethyl acetate", "limitMgM2": 5, "calibration": [{"amount": 0, "area": 2.1}, {"amount": 2, "area": 5}, {"amount": 4, "area": 9}, {"amount": 6, "area": 12.6}, {"amount": 8, "area": 17.3}, {"amount": 10, "area": 21}, {"amount": 12, "area": 24.7}], "specimens": [{"areas": [13.5, 13.7], "areaM2": 0.01}], "blanks": []}, {"name": "n-propanol", "calibration": [{"amount": 0, "area": 2.1}, {"amount": 2, "area": 5}, {"amount": 4, "area": 9}, {"amount": 6, "area": 12.6}, {"amount": 8, "area": 17.3}, {"amount": 10, "area": 21}, {"amount": 12, "area": 24.7}], "specimens": [{"areas": [9.5], "areaM2": 0.01}], "blanks": []}], "amountUnit": "µg", "weighting": "none", "sigma": "residual"},
    {"calibration": [{"amount": 0, "area": 2.1}, {"amount": 2, "area": 5}, {"amount": 4, "area": 9}, {"amount": 6, "area": 12.6}, {"amount": 8, "area": 17.3}, {"amount": 10, "area": 21}, {"amount": 12, "area": 24.7}], "specimens": [{"areas": [4], "areaM2": 0.01}], "limitMgM2": 0.01},
    {"headspace": {"sampleAreas": [10000, 6000], "standardAreas": [8000, 4800], "standardUg": 10, "areaM2": 0.01}},
  ],
  'rub': [
    {"readings": [{"specimen": "a", "strokes": 0, "density": 1.3}, {"specimen": "a", "strokes": 20, "density": 1.24, "transferred": 0.08}, {"specimen": "a", "strokes": 50, "density": 1.1800000000000002, "transferred": 0.11}, {"specimen": "a", "strokes": 100, "density": 1.06, "transferred": 0.16}, {"specimen": "b", "strokes": 0, "density": 1.3}, {"specimen": "b", "strokes": 20, "density": 1.27, "transferred": 0.06999999999999999}, {"specimen": "b", "strokes": 50, "density": 1.24, "transferred": 0.09}, {"specimen": "b", "strokes": 100, "density": 1.1800000000000002, "transferred": 0.11}], "filmDensity": 0.1, "receptorDensity": 0.06, "lostLimitPct": 15},
    {"readings": [{"specimen": "a", "strokes": 0, "density": 1.2}, {"specimen": "a", "strokes": 20, "density": 1.14, "transferred": 0.02}, {"specimen": "a", "strokes": 50, "density": 1.08, "transferred": 0.05}, {"specimen": "a", "strokes": 100, "density": 0.96, "transferred": 0.1}, {"specimen": "b", "strokes": 0, "density": 1.2}, {"specimen": "b", "strokes": 20, "density": 1.17, "transferred": 0.01}, {"specimen": "b", "strokes": 50, "density": 1.14, "transferred": 0.03}, {"specimen": "b", "strokes": 100, "density": 1.08, "transferred": 0.05}], "lostLimitPct": 15, "transferredLimit": 0.04},
    {"readings": [{"specimen": "a", "strokes": 0, "density": 1.2}, {"specimen": "a", "strokes": 20, "density": 1}, {"specimen": "b", "strokes": 0, "density": 1.2}, {"specimen": "b", "strokes": 30, "density": 1}]},
  ],
  'sample-size': [
    {"design": "two-sample", "difference": 1, "standardDeviation": 0.10000000000000005, "unit": "N/15 mm", "power": 0.9, "level": 0.9833333333333333},
    {"design": "two-shares", "shareA": 0.5, "shareB": 0.75},
    {"design": "one-way", "groups": 4, "difference": 1000, "standardDeviation": 1},
  ],
  'scratch': [
    {"specimens": [{"heldN": 2, "scratchedN": 2.5}, {"heldN": 2, "scratchedN": 2.5}, {"heldN": 2.5, "scratchedN": 3}, {"heldN": 2, "scratchedN": 2.5}, {"heldN": 2, "scratchedN": 2.5}, {"heldN": 2.5, "scratchedN": 3}]},
  ],
  'staining': [
    {"before": [94, 0.5, 2], "after": [[88, 4, 9], [87, 4.5, 10]]},
  ],
  'summary': [
    {"values": [199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57], "unit": "counts"},
    {"values": [38]},
  ],
  'surface-tack': [
    {"specimens": [{"grade": 1, "tackyAtMin": 2, "freeAtMin": 5}, {"grade": 2, "tackyAtMin": 5, "freeAtMin": 10}, {"grade": 1, "tackyAtMin": 2, "freeAtMin": 5}]},
  ],
  'tape-adhesion': [
    {"specimens": [{"removedPct": 21.03125, "removedLowPct": 20.396358422618817, "removedHighPct": 21.916206270084583}], "cuts": "none"},
    {"specimens": [{"squares": {"total": 100, "removed": 0}}, {"squares": {"total": 100, "removed": 0}}, {"squares": {"total": 100, "removed": 1}}], "cuts": "cross-cut"},
  ],
  'tape-label-lift': [
    {"specimens": [{"liftedPct": 0, "adhesiveSticks": true}, {"liftedPct": 0, "adhesiveSticks": true}, {"liftedPct": 2, "adhesiveSticks": true}, {"liftedPct": 0, "adhesiveSticks": false}, {"liftedPct": 0, "adhesiveSticks": true}]},
  ],
  'tone-value': [
    {"solid": [1.47, 1.49], "paper": 0.08, "patches": [{"nominalPct": 75, "tint": 0.9}, {"nominalPct": 50, "tint": [0.55, 0.57]}, {"nominalPct": 25, "tint": 0.32}, {"nominalPct": 50, "tint": 0.56}], "reportAtPct": 80},
    {"solid": [20, 12, 8], "tint": [10, 5, 3], "paper": [84, 87, 70]},
    {"solid": 1.2, "tint": 0.05, "paper": 0.08},
  ],
  'trap': [
    {"first": [0.45], "second": [1.35], "overprint": [1.55], "paper": 0},
    {"first": 0.4, "second": 1.2, "overprint": 1.7},
  ],
  'treatment-decay': [
    {"requiredMNm": 38, "readings": [{"days": 8, "wetsMNm": 42, "retractsMNm": 43}, {"days": 9, "wetsMNm": 41, "retractsMNm": 42}, {"days": 11, "wetsMNm": 41, "retractsMNm": 42}, {"days": 14, "wetsMNm": 41, "retractsMNm": 42}, {"days": 18, "wetsMNm": 41, "retractsMNm": 42}, {"days": 23, "wetsMNm": 40, "retractsMNm": 41}, {"days": 29, "wetsMNm": 40, "retractsMNm": 41}, {"days": 36, "wetsMNm": 40, "retractsMNm": 41}, {"days": 43, "wetsMNm": 39, "retractsMNm": 40}]},
    {"readings": [{"days": 0, "wettingMNm": 48}, {"days": 2, "wettingMNm": 46.52143788966211}, {"days": 5, "wettingMNm": 44.70320046035639}, {"days": 10, "wettingMNm": 42.49328964117222}, {"days": 20, "wettingMNm": 40.018965179946555}], "requiredMNm": 40},
  ],
  'treatment-dose': [
    {"powerW": 2000, "widthMm": 1000, "speedMPerMin": 100, "sides": 1},
    {"doseWMinPerM2": 20, "widthMm": 1200, "speedMPerMin": 150},
  ],
  'tristimulus': [
    {"wavelengthsNm": [400, 410, 420, 430, 440, 450, 460, 470, 480, 490, 500, 510, 520, 530, 540, 550, 560, 570, 580, 590, 600, 610, 620, 630, 640, 650, 660, 670, 680, 690, 700], "reflectance": [4, 4, 4, 4.001, 4.002, 4.003, 4.006, 4.013, 4.027, 4.055, 4.112, 4.227, 4.463, 4.938, 5.885, 7.728, 11.152, 16.995, 25.654, 36.139, 46.124, 53.679, 58.461, 61.154, 62.572, 63.293, 63.652, 63.829, 63.916, 63.959, 63.98], "scale": "percent", "illuminant": "D50", "observer": 2},
  ],
  'two-factor': [
    {"readings": [{"a": 1, "b": 0, "value": 2.9}, {"a": 1, "b": 0, "value": 3}, {"a": 1, "b": 0, "value": 3.1}, {"a": 1, "b": 1, "value": 3.9}, {"a": 1, "b": 1, "value": 4}, {"a": 1, "b": 1, "value": 4.1}, {"a": 2, "b": 0, "value": 2.4}, {"a": 2, "b": 0, "value": 2.5}, {"a": 2, "b": 0, "value": 2.6}, {"a": 2, "b": 1, "value": 3}, {"a": 2, "b": 1, "value": 3.1}, {"a": 2, "b": 1, "value": 3.2}], "nameA": "Wax (%)", "nameB": "Promoter (%)", "unit": "N/15 mm", "level": 0.95},
    {"readings": [{"a": "2", "b": "y", "value": 0}, {"a": "1", "b": "y", "value": -3}, {"a": "2", "b": "x", "value": -3}, {"a": "1", "b": "y", "value": -1}], "type": "III"},
  ],
  'verdict': [
    {"value": 2.55, "low": 2.41, "high": 2.69, "lowerLimit": 2.5, "rule": "guarded"},
    {"value": 3, "low": null, "high": null, "lowerLimit": 1, "upperLimit": 4, "rule": "simple"},
  ],
  'viscosity-cup': [
    {"cup": "d1200-4", "seconds": [58.3], "temperatureC": 24.8, "densityGCm3": 0.94},
  ],
  'wetting-fluid': [
    {"positions": [{"label": "Position 1", "acrossMm": 50, "wetsMNm": 41, "retractsMNm": 42}], "criterionS": 2, "requiredMNm": 38, "temperatureC": 23, "relativeHumidityPct": 50},
    {"positions": [{"label": "edge", "readings": [{"fluidMNm": 36, "heldS": 5}, {"fluidMNm": 38, "heldS": 2}, {"fluidMNm": 40, "heldS": 1.9}, {"fluidMNm": 42, "heldS": 0.5}]}]},
    {"positions": [{"wetsMNm": 38, "retractsMNm": 40}], "temperatureC": 25.1, "relativeHumidityPct": 44.9},
  ],
  'whiteness': [
    {"xyz": [[93, 98, 104], [92.6, 97.7, 103.5]], "illuminant": "D65", "observer": 10},
    {"xyz": [80, 84, 50], "illuminant": "D65", "observer": 10},
  ],
};
