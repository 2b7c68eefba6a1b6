// The words of a question that is asked of each cylinder, coil or connector.

export const PART = {
  whichCylinder: "Which cylinder?",
  whichCoil: "Which coil?",
  whichConnector: "Which connector?",
  given: "Answered so far",
};
